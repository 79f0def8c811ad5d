using System.Collections.Generic;

namespace LubeController.Analysis.PowerCuts;

/// <summary>What a sweep found.</summary>
public sealed record PowerCutResult
{
    /// <summary>Writes of each kind in the run.</summary>
    public required IReadOnlyDictionary<WriteKind, long> Writes { get; init; }

    /// <summary>Writes of each kind that were cut at every byte.</summary>
    public required IReadOnlyDictionary<WriteKind, long> WritesCut { get; init; }

    /// <summary>Cuts tried for each kind: bytes times what may stand after them.</summary>
    public required IReadOnlyDictionary<WriteKind, long> Cuts { get; init; }

    /// <summary>Largest rest given back by a cut, milliseconds.</summary>
    public required int MostRestBackMs { get; init; }

    /// <summary>Doses completed in the run.</summary>
    public required int Doses { get; init; }

    /// <summary>Starts in the run.</summary>
    public required int Starts { get; init; }

    /// <summary>The first violations, in order; at most <see cref="PowerCutSweep.MostViolations"/> of each run.</summary>
    public required IReadOnlyList<PowerCutViolation> Violations { get; init; }
}
