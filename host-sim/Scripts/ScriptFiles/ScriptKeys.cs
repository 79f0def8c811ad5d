using System.Collections.Generic;
using LubeController.Scripts.Reading;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>The fields of a script file, group by group.</summary>
public static class ScriptKeys
{
    /// <summary>The file itself.</summary>
    public static KeySet Script { get; } = new(
        "a script", "script", Inheritance.Key, "plant", "settings", "duration", "scan-period", "seed", "scan-bound", "steps", "expect");

    /// <summary>The actions a step may have, one of which each step has.</summary>
    public static IReadOnlyList<string> Actions { get; } =
        ["fault", "heal", "press", "hold", "release", "set", "shaft-speed", "temperature", "refill", "power", "mark"];

    /// <summary>A step.</summary>
    public static KeySet Step { get; } = new(
        "a step", ["name", "at", "after", "since", "delay", .. Actions, "part", "magnitude", "for", "to", "ramp"]);

    /// <summary>The sorts of demand, one of which each expectation makes.</summary>
    public static IReadOnlyList<string> Demands { get; } = ["always", "never", "eventually", "until", "holds", "in-order"];

    /// <summary>An expectation.</summary>
    public static KeySet Expectation { get; } = new("an expectation", ["name", .. Demands, "within", "for", "from", "to"]);

    /// <summary>What stands under <c>until</c>.</summary>
    public static KeySet Until { get; } = new("an 'until'", "hold", "until", "within");

    /// <summary>Each group by the place it has in the file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlace { get; } = new Dictionary<string, KeySet>
    {
        [""] = Script,
        ["steps[]"] = Step,
        ["expect[]"] = Expectation,
        ["expect[].until"] = Until,
    };
}
