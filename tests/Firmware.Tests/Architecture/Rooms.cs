using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>The rooms and the arrows between them, in the one place that lists them.</summary>
public static class Rooms
{
    /// <summary>The room of everything under tests/.</summary>
    public const string Tests = "tests";

    /// <summary>What several test projects share, tests/Support and tests/Draws; only they may refer to it, and it holds no tests.</summary>
    public const string Support = "Support";

    /// <summary>
    /// The one place where firmware sources may be built a second time: mutation testing may need the desktop library.
    /// </summary>
    public const string MutationFolder = "tests/Mutation/";

    private static readonly Dictionary<string, string[]> Arrows = new()
    {
        ["Core"] = [],
        ["Board"] = ["Core"],
        ["RuleTemplate"] = ["Core"],
        ["Plant"] = [],
        ["Emulator"] = ["Core", "Board", "Plant"],
        ["Files"] = ["Plant", "Core"],
        ["Scripts"] = ["Files", "Emulator", "RuleTemplate", "Core", "Board", "Plant"],
        ["Analysis"] = ["Scripts", "Files", "Emulator", "Core", "Board", "Plant"],
        ["Rig"] = ["Scripts"],
        ["Panel"] = ["Scripts", "Emulator"],
        ["Plots"] = ["Emulator", "Scripts"],
        ["Cli"] = ["Core", "Board", "RuleTemplate", "Plant", "Emulator", "Files", "Scripts", "Analysis", "Rig", "Panel"],
    };

    /// <summary>The room that a path lies in, or null: a folder of firmware/ without its prefix, a folder of host-sim/, or tests.</summary>
    public static string? Of(string path)
    {
        string[] parts = path.Split('/');
        string? room = (parts[0], parts.Length) switch
        {
            ("tests", > 2) when parts[1] is Support or "Draws" => Support,
            ("tests", _) => Tests,
            ("firmware", > 2) => parts[1].Replace("LubeController.", ""),
            ("host-sim", > 2) => parts[1],
            _ => null,
        };
        return room is Tests or Support || (room != null && Arrows.ContainsKey(room)) ? room : null;
    }

    /// <summary>Whether one room may reference another directly.</summary>
    public static bool MayReference(string from, string to) =>
        from == to ? from is not (Tests or Support) : to == Support ? from == Tests : from == Support ? to != Tests : to != Tests && (from == Tests || Arrows[from].Contains(to));

    /// <summary>Whether one room may use another, directly or by way of others.</summary>
    public static bool MayReach(string from, string to) =>
        MayReference(from, to) || (from is not (Tests or Support) && Arrows[from].Any(via => MayReach(via, to)));

    /// <summary>The rooms that one may reference directly, for messages.</summary>
    public static string Allowed(string from) => from is Tests or Support ? "every room but tests"
        : Arrows[from].Length == 0 ? "none" : string.Join(", ", Arrows[from]);
}
