using System;

namespace LubeController.Analysis.Specification;

/// <summary>Sums of durations that stop where nothing more depends on them, ms.</summary>
internal static class Durations
{
    /// <summary>What remains after some time, 0 or more.</summary>
    internal static int Less(int remainingMs, int elapsedMs) => Math.Max(0, remainingMs - elapsedMs);

    /// <summary>What has passed after some more time, up to a limit.</summary>
    internal static int More(int countedMs, int elapsedMs, int limitMs) => (int)Math.Min((long)countedMs + elapsedMs, limitMs);

    /// <summary>The shortest duration that is longer.</summary>
    internal static int JustBeyond(int durationMs) => durationMs == int.MaxValue ? int.MaxValue : durationMs + 1;
}
