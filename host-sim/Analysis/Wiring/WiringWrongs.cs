using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>What is wrong with a wiring by itself, each part of it sound: shorts, supplies against each other, relays that find no rest.</summary>
internal static class WiringWrongs
{
    // A control supply is to hold nine tenths of its voltage; assumed.
    private const double LeastShare = 0.9;

    /// <summary>One sentence for each, in health and then with each alarm that drives the outputs otherwise.</summary>
    public static IReadOnlyList<string> Of(SupervisoryWiringDescription wiring, IReadOnlyList<WiringCondition> conditions)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        var wrongs = new List<string>();
        Look(OutputPattern.Health, "in health");
        foreach (IGrouping<OutputPattern, WiringCondition> alike in conditions.GroupBy(condition => condition.Pattern))
            Look(alike.Key, $"with {alike.First().Name}");
        return wrongs;

        void Look(OutputPattern pattern, string when)
        {
            SupervisoryWiring circuit = WiringProbe.Sound(wiring, pattern);
            if (circuit.Buzzing is { } relay && told.Add(relay))
                wrongs.Add($"relay {relay} interrupts its own supply {when} and buzzes");
            foreach (WiringSupply supply in wiring.Supplies)
            {
                double volts = circuit.TerminalV(supply.Plus) - circuit.TerminalV(supply.Minus);
                if (volts < LeastShare * supply.VoltageV && told.Add(supply.Name))
                    wrongs.Add(FormattableString.Invariant($"supply {supply.Name} gives {Math.Round(volts, 1) + 0.0} V of {supply.VoltageV} V {when}: something shorts or overloads it"));
            }
        }
    }
}
