namespace LubeController.Analysis.Specification;

/// <summary>The conditions that the cells of the phase table name.</summary>
public enum PhaseGuard
{
    /// <summary>No condition.</summary>
    Always,

    /// <summary>New tries are set, stop is off and no interlock stands.</summary>
    NewTriesStopOffNoInterlock,

    /// <summary>Stop is off and a pump-stopping failure stands.</summary>
    StopOffFailureStands,

    /// <summary>Stop is off and no pump-stopping failure stands.</summary>
    StopOffNoFailure,

    /// <summary>Stop is on.</summary>
    StopOn,

    /// <summary>Stop is off and no interlock stands.</summary>
    StopOffNoInterlock,

    /// <summary>Stop is on, or an interlock stands.</summary>
    StopOnOrInterlock,

    /// <summary>Stop is off and no alarm of the category failure stands.</summary>
    StopOffNoFailureAtAll,

    /// <summary>Stop is on, or an alarm of the category failure stands.</summary>
    StopOnOrFailure,

    /// <summary>No pump-stopping failure stands any more.</summary>
    NoPumpStoppingFailure,

    /// <summary>A pump-stopping failure stands.</summary>
    PumpStoppingFailure,

    /// <summary>Prime was pressed in rest.</summary>
    CameFromRest,

    /// <summary>Prime was pressed in stopped.</summary>
    CameFromStopped,

    /// <summary>Prime was pressed in failed.</summary>
    CameFromFailed,

    /// <summary>The same, and a pump-stopping failure still stands.</summary>
    CameFromFailedFailureStands,

    /// <summary>The same, and a reset in between has cleared all of them.</summary>
    CameFromFailedNoFailure,
}
