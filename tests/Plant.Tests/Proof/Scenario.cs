using System;
using System.Collections.Generic;
using LubeController.Plant.Description;

namespace LubeController.Plant.Tests.Proof;

/// <summary>A plant and what is done to it, so that the same run can be had with finer steps.</summary>
/// <param name="Name">Name, for reports.</param>
/// <param name="Plant">The plant.</param>
/// <param name="EndS">When the run ends, s.</param>
/// <param name="Commands">What is done when, s, in order of time.</param>
internal sealed record Scenario(string Name, PlantDescription Plant, double EndS, params IReadOnlyList<(double AtS, Action<LubricationSystem> Do)> Commands)
{
    /// <summary>Watches events and may act on them: the controller of a plant that needs one.</summary>
    internal Func<Action<LubricationSystem>>? Control { get; init; }

    /// <summary>Runs it.</summary>
    /// <param name="stepScale">As <see cref="LubricationSystem"/> has it.</param>
    /// <param name="longestStepS">As <see cref="LubricationSystem"/> has it.</param>
    /// <param name="endS">When it ends, s; 0: as described.</param>
    internal Evidence Run(double stepScale = 1, double longestStepS = double.PositiveInfinity, double endS = 0)
    {
        var system = new LubricationSystem(Plant, 1, stepScale, longestStepS);
        var evidence = new Evidence(system);
        system.Observer = evidence;
        Action<LubricationSystem>? control = Control?.Invoke();
        long endUs = (long)((endS > 0 ? endS : EndS) * 1e6);
        foreach ((double atS, Action<LubricationSystem> act) in Commands)
        {
            long atUs = Math.Min(endUs, (long)(atS * 1e6));
            Advance(system, atUs, control);
            if (atUs < endUs || atS == 0)
                act(system);
        }

        Advance(system, endUs, control);
        evidence.Close();
        return evidence;
    }

    private static void Advance(LubricationSystem system, long untilUs, Action<LubricationSystem>? control)
    {
        while (control is not null && system.NextEventUs <= untilUs)
        {
            system.AdvanceTo(system.NextEventUs);
            control(system);
        }

        system.AdvanceTo(untilUs);
    }
}
