using System.Collections.Generic;
using LubeController.Board;
using LubeController.Emulator;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>What one run of a script gave.</summary>
public sealed record RunResult
{
    /// <summary>Everything recorded; its end is the end of the run.</summary>
    public required Trace Trace { get; init; }

    /// <summary>The steps carried out, in order of time.</summary>
    public required IReadOnlyList<FiredStep> FiredSteps { get; init; }

    /// <summary>The steps whose fault never took effect, in order of time.</summary>
    public IReadOnlyList<Step> IdleFaults { get; init; } = [];

    /// <summary>What the board's logbook held at the end, the oldest entry first.</summary>
    public IReadOnlyList<LogEntry> Logbook { get; init; } = [];

    /// <summary>Scans of the controller that were executed.</summary>
    public long ScansExecuted { get; init; }

    /// <summary>Scan ticks that lie in the run, executed or skipped.</summary>
    public long TicksCovered { get; init; }

    /// <summary>Events of the plant that were computed.</summary>
    public long PlantEvents { get; init; }

    /// <summary>Whether the run was broken off because it had executed as many scans as it may.</summary>
    public bool ScanBoundReached { get; init; }
}
