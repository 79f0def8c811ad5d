namespace LubeController.Analysis.Specification;

/// <summary>What the guards of the phase machine ask.</summary>
internal sealed class PhaseFacts(SpecSettings settings, SpecState state, StandingAlarms standing)
{
    /// <summary>Stop is known to be off.</summary>
    internal bool StopIsOff => state.Levels.Stop is { Known: true, Level: false };

    /// <summary>An interlock stands.</summary>
    internal bool InterlockStands => standing.Any(AlarmAction.Interlock);

    /// <summary>An interlock or a dose-ending alarm stands.</summary>
    internal bool PumpStoppingFailureStands => InterlockStands || standing.Any(AlarmAction.DoseEnding);

    /// <summary>An alarm of the category failure stands.</summary>
    internal bool FailureStands => standing.AnyFailure;

    /// <summary>Doses are tried again in failed.</summary>
    internal bool NewTriesAreSet => settings.NewTries;

    /// <summary>The phase in which prime was pressed.</summary>
    internal Phase CameFrom => state.CameFrom;
}
