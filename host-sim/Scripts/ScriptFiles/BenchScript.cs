using System.Collections.Generic;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Plant.Description;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Steps.Drawing;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>A bench script that was accepted, with its plant and settings. Immutable.</summary>
public sealed record BenchScript
{
    /// <summary>Path of its file as the user gave it.</summary>
    public required string Path { get; init; }

    /// <summary>What it shows, in words.</summary>
    public required string Title { get; init; }

    /// <summary>The plant.</summary>
    public required PlantDescription Plant { get; init; }

    /// <summary>The controller's settings.</summary>
    public required ControlSettings Settings { get; init; }

    /// <summary>Length of the run, microseconds.</summary>
    public required long DurationUs { get; init; }

    /// <summary>Time between two scans, whole milliseconds, 1 to 1000.</summary>
    public required int ScanPeriodMs { get; init; }

    /// <summary>Seed of everything irregular.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Most scans the run may execute.</summary>
    public required long ScanBound { get; init; }

    /// <summary>What is done, in order of writing.</summary>
    public required IReadOnlyList<Step> Steps { get; init; }

    /// <summary>What is demanded, in order of writing; none makes the script not exercised.</summary>
    public required IReadOnlyList<Expectation> Expectations { get; init; }

    /// <summary>What is unusual about its files without being wrong.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];

    /// <summary>The script as one run carries it out: whatever is left to the seed is drawn. Drawing again changes nothing.</summary>
    public BenchScript Drawn() => this with { Steps = StepDraws.Make(Steps, Seed) };
}
