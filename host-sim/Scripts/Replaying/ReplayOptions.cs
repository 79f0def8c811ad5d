using System.Collections.Generic;

namespace LubeController.Scripts.Replaying;

/// <summary>What a replay was asked to do.</summary>
public sealed record ReplayOptions
{
    /// <summary>Files, folders and patterns.</summary>
    public required IReadOnlyList<string> Paths { get; init; }

    /// <summary>Seed in place of the scripts' own.</summary>
    public ulong? Seed { get; init; }

    /// <summary>Scan bound in place of the scripts' own.</summary>
    public long? ScanBound { get; init; }

    /// <summary>Only scripts with this text in path or title.</summary>
    public string? Filter { get; init; }

    /// <summary>Folder to write records to.</summary>
    public string? TraceFolder { get; init; }

    /// <summary>Stored record, or folder of them, to compare with.</summary>
    public string? Baseline { get; init; }

    /// <summary>File to write verdicts to as JUnit XML.</summary>
    public string? JunitFile { get; init; }
}
