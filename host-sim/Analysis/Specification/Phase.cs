namespace LubeController.Analysis.Specification;

/// <summary>What the controller is doing, in the order of the columns of the phase table.</summary>
public enum Phase
{
    /// <summary>Between two doses; a dose may be pending.</summary>
    Rest,

    /// <summary>A dose is being given.</summary>
    Dose,

    /// <summary>The pump rests after a pulse timeout, before the same dose is tried again.</summary>
    RetryPause,

    /// <summary>A person holds the prime button.</summary>
    Prime,

    /// <summary>The operating stop was on; a start press is awaited.</summary>
    Stopped,

    /// <summary>A pump-stopping failure stands.</summary>
    Failed,

    /// <summary>Relay and warning output are moved for the wiring test.</summary>
    OutputTest,
}
