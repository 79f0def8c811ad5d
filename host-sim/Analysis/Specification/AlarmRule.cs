namespace LubeController.Analysis.Specification;

/// <summary>How an alarm acts on the pump.</summary>
public enum AlarmAction
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>The running dose fails, the phase becomes failed; priming and new tries stay possible.</summary>
    DoseEnding,

    /// <summary>The pump is off while it stands, and the phase becomes failed.</summary>
    Interlock,

    /// <summary>The pump is off while it stands; a running dose and its timers wait.</summary>
    Holding,
}

/// <summary>Status categories of NAMUR NE 107 that an alarm can have.</summary>
public enum AlarmCategory
{
    /// <summary>Drops the healthy relay while it stands.</summary>
    Failure,

    /// <summary>Drives the warning output while it stands.</summary>
    OutOfSpecification,

    /// <summary>Drives the warning output while it stands.</summary>
    MaintenanceRequired,
}

/// <summary>One row of the alarm table.</summary>
/// <param name="Id">Which alarm.</param>
/// <param name="Name">Its name in plain words.</param>
/// <param name="Action">How it acts on the pump.</param>
/// <param name="Category">Its category.</param>
/// <param name="Latches">Whether it stands on after its condition has ended, until reset.</param>
/// <param name="OnlyARunningPumpShows">
/// Whether only a running pump can show its condition: then the condition lasts until a reset or a completed dose ends it.
/// </param>
public sealed record AlarmRule(
    AlarmId Id, string Name, AlarmAction Action, AlarmCategory Category, bool Latches, bool OnlyARunningPumpShows = false)
{
    /// <summary>Whether it is a pump-stopping failure: an interlock or dose-ending.</summary>
    public bool StopsPump => Action is AlarmAction.Interlock or AlarmAction.DoseEnding;
}
