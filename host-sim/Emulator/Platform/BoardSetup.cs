namespace LubeController.Emulator.Platform;

/// <summary>How a sound microcontroller is built.</summary>
/// <param name="Seed">Seed of what is irregular in it.</param>
/// <param name="PeriodUs">From scan to scan, us.</param>
/// <param name="JitterUs">Most by which a scan comes earlier or later, us.</param>
/// <param name="QueueDepth">Records that its queue of pin events holds.</param>
/// <param name="WatchdogUs">Time without a kick after which its watchdog resets it, us.</param>
internal sealed record BoardSetup(ulong Seed, long PeriodUs, long JitterUs, int QueueDepth, long WatchdogUs);
