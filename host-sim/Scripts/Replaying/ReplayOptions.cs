using System.Collections.Generic;

namespace LubeController.Scripts.Replaying;

/// <summary>What a replay was asked to do.</summary>
public sealed record ReplayOptions
{
    /// <summary>Files, folders and patterns.</summary>
    public required IReadOnlyList<string> Paths { get; init; }

    /// <summary>Runs at a time, 1 or more; what is printed and written does not depend on it.</summary>
    public int Jobs { get; init; } = 1;

    /// <summary>Seed in place of the scripts' own.</summary>
    public ulong? Seed { get; init; }

    /// <summary>Scan bound in place of the scripts' own.</summary>
    public long? ScanBound { get; init; }

    /// <summary>Only scripts with this text in path or title.</summary>
    public string? Filter { get; init; }

    /// <summary>Whether expectations that held are listed too, each with its margin.</summary>
    public bool ShowMargins { get; init; }

    /// <summary>Folder to write records to.</summary>
    public string? TraceFolder { get; init; }

    /// <summary>Stored record, or folder of them, to compare with.</summary>
    public string? Baseline { get; init; }

    /// <summary>File to write verdicts to as JUnit XML.</summary>
    public string? JunitFile { get; init; }
}
