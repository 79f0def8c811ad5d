namespace LubeController.Analysis.Specification;

/// <summary>One alarm between two scans.</summary>
internal sealed class AlarmState
{
    /// <summary>Its condition with delays.</summary>
    internal DelayFilter Condition;

    /// <summary>Whether its condition is present.</summary>
    internal bool Active;

    /// <summary>Whether its latch is set.</summary>
    internal bool Latched;

    /// <summary>Its lifecycle state.</summary>
    internal Lifecycle Lifecycle;

    /// <summary>Remaining shelving time, ms.</summary>
    internal int ShelvedMs;

    /// <summary>Whether it stands: active or latched.</summary>
    internal bool Stands => Active || Latched;

    /// <summary>Whether it waits to be acknowledged.</summary>
    internal bool Waits => Lifecycle is Lifecycle.Unacknowledged or Lifecycle.ReturnedUnacknowledged;

    /// <summary>Whether a person has hidden it.</summary>
    internal bool IsSilenced => Lifecycle is Lifecycle.Shelved or Lifecycle.OutOfService;

    /// <summary>Whether nothing hides it.</summary>
    internal bool IsShown => !IsSilenced && Lifecycle != Lifecycle.SuppressedByDesign;

    /// <summary>Whether its condition lasts: one that is there again, if only in its delay on, has not ended.</summary>
    internal bool Lasts => Active || Condition.Present;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        Condition.Pass(elapsedMs);
        ShelvedMs = Durations.Less(ShelvedMs, elapsedMs);
    }
}
