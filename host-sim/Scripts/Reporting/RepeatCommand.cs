using System;
using System.Linq;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Reporting;

/// <summary>The command that repeats one script just as it was run.</summary>
public static class RepeatCommand
{
    /// <summary>The command, quoted for a shell.</summary>
    public static string For(BenchScript script, string? baseline = null)
    {
        ArgumentNullException.ThrowIfNull(script);
        string bound = script.ScanBound == ScriptReader.PresetScanBound ? "" : FormattableString.Invariant($" --scan-bound {script.ScanBound}");
        string compared = baseline == null ? "" : " --baseline " + Quoted(baseline);
        return FormattableString.Invariant($"lubebench replay {Quoted(script.Path)} --seed {script.Seed}{bound}{compared}");
    }

    private static string Quoted(string path) =>
        path.All(character => char.IsAsciiLetterOrDigit(character) || character is '/' or '.' or '-' or '_' or ':' or '\\')
            ? path
            : "'" + path.Replace("'", "'\\''") + "'";
}
