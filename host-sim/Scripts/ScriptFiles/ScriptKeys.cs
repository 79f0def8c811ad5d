using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>The fields of a script file, group by group.</summary>
public static class ScriptKeys
{
    /// <summary>The actions a step may have, one of which each step has.</summary>
    public static IReadOnlyList<string> Actions { get; } =
        ["fault", "heal", "press", "hold", "release", "set", "shaft-speed", "temperature", "refill", "power", "shelve", "unshelve", "out-of-service", "in-service", "mark"];

    /// <summary>A step.</summary>
    public static KeySet Step { get; } = new(
        "a step", ["name", "at", "after", "since", "delay", .. Actions, "part", "magnitude", "with", "over", "for", "to", "ramp"]);

    /// <summary>A range from which the seed draws, in place of a time or a magnitude.</summary>
    public static KeySet Draw { get; } = new("a range to draw from", "from", "to", "spread");

    /// <summary>How the values of such a range are spread, by value.</summary>
    public static IReadOnlyList<string> Spreads { get; } = ["even", "log"];

    /// <summary>Second numbers of faults.</summary>
    public static KeySet With { get; } = new(
        "a 'with'", BenchFaults.All.Where(fault => fault.Second != null).Select(fault => fault.Second!.Name).Distinct());

    /// <summary>The sorts of demand, one of which each expectation makes.</summary>
    public static IReadOnlyList<string> Demands { get; } = ["always", "never", "eventually", "until", "holds", "in-order"];

    /// <summary>An expectation.</summary>
    public static KeySet Expectation { get; } = new("an expectation", ["name", .. Demands, "within", "for", "from", "to"]);

    /// <summary>What stands under <c>until</c>.</summary>
    public static KeySet Until { get; } = new("an 'until'", "hold", "until", "within");

    /// <summary>Each group by the place it has in the file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlace { get; } = new Dictionary<string, KeySet>
    {
        [""] = FileKeys.Script,
        ["steps[]"] = Step,
        ["steps[].at"] = Draw,
        ["steps[].magnitude"] = Draw,
        ["steps[].with"] = With,
        ["expect[]"] = Expectation,
        ["expect[].until"] = Until,
    };
}
