using System;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>Inputs in which conditions of alarms are seen directly.</summary>
internal static class WitnessedInputs
{
    /// <summary>The inputs with further alarms witnessed.</summary>
    internal static SpecInputs WithWitness(this SpecInputs inputs, params ReadOnlySpan<AlarmId> alarms)
    {
        ulong witnessed = inputs.Witnessed;
        foreach (AlarmId alarm in alarms)
            witnessed |= 1UL << (int)alarm;
        return inputs with { Witnessed = witnessed };
    }
}
