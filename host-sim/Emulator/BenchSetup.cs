using System;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant.Description;

namespace LubeController.Emulator;

/// <summary>What stands on the bench for one run.</summary>
public sealed record BenchSetup
{
    /// <summary>The simulated lubrication system.</summary>
    public required PlantDescription Plant { get; init; }

    /// <summary>The settings of the core.</summary>
    public required Settings Settings { get; init; }

    /// <summary>Makes the user's rest rule anew at every power-up; null for none.</summary>
    public Func<IRestRule>? MakeRule { get; init; }

    /// <summary>Time between two scans, whole milliseconds, 1 to 1000.</summary>
    public int ScanPeriodMs { get; init; } = 10;

    /// <summary>Length of the run, microseconds of virtual time, 1 or more.</summary>
    public required long DurationUs { get; init; }

    /// <summary>Seed of everything irregular in the plant.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Whether quiet time is skipped; the trace is the same either way.</summary>
    public bool SkipQuietTime { get; init; } = true;

    /// <summary>Most scans the run may execute before it is broken off.</summary>
    public long ScanBound { get; init; } = long.MaxValue;

    /// <summary>Reading of the board's millisecond clock at power-up; near 2^32 it wraps during the run.</summary>
    public uint ClockStartMs { get; init; }

    /// <summary>Time of the board's own watchdog, milliseconds, at least the scan period, at most 60 000.</summary>
    public int WatchdogMs { get; init; } = 1000;

    /// <summary>Most by which a scan comes earlier or later than planned, microseconds, 0 to 500 000; never half a scan period or more.</summary>
    public long ScanJitterUs { get; init; }

    /// <summary>Records that the board's queue of pin events holds, 16 to 512.</summary>
    public int PinQueueDepth { get; init; } = 256;

    /// <summary>Time of day at which the run starts, seconds since 1970-01-01 00:00 UTC; 0 for a board without a clock.</summary>
    public uint WallTimeAtStartS { get; init; }

    /// <summary>The microcontroller of the virtual board.</summary>
    internal BoardSetup Board => new(Seed, ScanPeriodMs * 1000L, ScanJitterUs, PinQueueDepth, WatchdogMs * 1000L);

    /// <summary>Refuses numbers outside their ranges.</summary>
    internal void Check()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(ScanPeriodMs, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ScanPeriodMs, 1000);
        ArgumentOutOfRangeException.ThrowIfLessThan(DurationUs, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(WatchdogMs, ScanPeriodMs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(WatchdogMs, 60_000);
        ArgumentOutOfRangeException.ThrowIfNegative(ScanJitterUs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ScanJitterUs, 500_000);
        ArgumentOutOfRangeException.ThrowIfLessThan(PinQueueDepth, PinQueue.LeastDepth);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(PinQueueDepth, PinQueue.MostDepth);
    }
}
