using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>A difference that is allowed, because the control rules are silent and either reading is as good.</summary>
public enum LockstepAllowance
{
    /// <summary>Of several alarms raised in one scan either may be first up.</summary>
    FirstUpOfOneScan,

    /// <summary>A retry pause runs on while the supply is low.</summary>
    PauseRunsOnWhileHeld,
}

/// <summary>The one table of allowed differences.</summary>
public static class LockstepAllowances
{
    /// <summary>Each with its reason.</summary>
    public static IReadOnlyDictionary<LockstepAllowance, string> Reasons { get; } = new Dictionary<LockstepAllowance, string>
    {
        [LockstepAllowance.FirstUpOfOneScan] =
            "A scan takes all inputs at one instant: which of two alarms raised by it came first nobody can tell.",
        [LockstepAllowance.PauseRunsOnWhileHeld] =
            "A dose and its timers wait while the supply is low; a retry pause is a time with the pump off, and in it the pump is off anyway.",
    };

    /// <summary>All of them.</summary>
    public static IReadOnlySet<LockstepAllowance> All { get; } = Enum.GetValues<LockstepAllowance>().ToHashSet();

    internal static SpecReadings Readings(IReadOnlySet<LockstepAllowance> allowed) =>
        new() { PauseRunsOnWhileHeld = allowed.Contains(LockstepAllowance.PauseRunsOnWhileHeld) };
}
