using LubeController.Emulator.Storage;

namespace LubeController.Analysis.PowerCuts;

/// <summary>A cut after which something promised does not hold.</summary>
/// <param name="Write">Number of the write in the run, from 1.</param>
/// <param name="Kind">Kind of the write.</param>
/// <param name="Byte">Bytes that were written before the cut; -1 where no cut was needed.</param>
/// <param name="Rest">What stood after them.</param>
/// <param name="Text">What does not hold.</param>
public sealed record PowerCutViolation(long Write, WriteKind Kind, int Byte, TearRest Rest, string Text);
