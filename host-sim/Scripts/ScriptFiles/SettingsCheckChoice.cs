using System.Collections.Generic;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>
/// Who judges the settings of a script. The bench refuses what the board would refuse, before anything runs. A script may
/// ask that they reach the board as they are, as settings do that were written by other means: then the board refuses them.
/// </summary>
internal static class SettingsCheckChoice
{
    /// <summary>The field of a script; without it the bench judges.</summary>
    public const string Key = "settings-check";

    /// <summary>The words for who judges.</summary>
    public static IReadOnlyList<string> Judges { get; } = ["bench", "board"];

    /// <summary>Whether the settings go to the board unjudged.</summary>
    public static bool IsTheBoards(MapReader script) => script.Choice(Key, Judges) == 1;

    /// <summary>Adds a problem where the board would accept what it is to refuse.</summary>
    public static void Confirm(MapReader script, ControlSettings settings)
    {
        if (new SettingsCheck().Accepts(settings.Values, settings.Rule != null))
            script.Problems.Add(script.Map[Key]!, "the board accepts these settings, so that nothing is refused", "delete it, or name settings that the board refuses");
    }
}
