namespace LubeController.Analysis.Specification;

/// <summary>What can happen to a phase, in the order of the rows of the rules' table.</summary>
public enum PhaseEvent
{
    /// <summary>Rest over, or restart delay over with a dose pending.</summary>
    DoseDue,

    /// <summary>Dose counted, or run time over.</summary>
    DoseOver,

    /// <summary>Pulse timeout, retries left.</summary>
    TimeoutRetriesLeft,

    /// <summary>Pulse timeout, none left; any dose-ending alarm.</summary>
    DoseFails,

    /// <summary>Pause over.</summary>
    PauseOver,

    /// <summary>Interlock alarm.</summary>
    Interlock,

    /// <summary>Stop on.</summary>
    StopOn,

    /// <summary>Start pressed.</summary>
    StartPressed,

    /// <summary>Dose-now pressed.</summary>
    DoseNowPressed,

    /// <summary>Prime pressed.</summary>
    PrimePressed,

    /// <summary>Prime released, or its limit.</summary>
    PrimeOver,

    /// <summary>Output test pressed.</summary>
    OutputTestPressed,

    /// <summary>Output test over.</summary>
    OutputTestOver,

    /// <summary>Reset.</summary>
    Reset,

    /// <summary>Power-up after a cut in this phase.</summary>
    PowerUp,
}
