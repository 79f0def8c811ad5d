namespace LubeController.Core;

/// <summary>What the core is doing. The whole table, phase by event, stands in <c>firmware/PHASES.md</c>.</summary>
public enum Phase
{
    /// <summary>The pump is off; the next dose comes when the rest, or the restart delay of a pending dose, is over.</summary>
    Rest = 0,

    /// <summary>The pump runs and the divider's pulses are counted; a dose by pressure takes its steps, the pump off in some.</summary>
    Dose = 1,

    /// <summary>The pump is off for a moment after a pulse timeout; the same dose goes on afterwards.</summary>
    RetryPause = 2,

    /// <summary>The pump runs for as long as a person holds the prime button.</summary>
    Prime = 3,

    /// <summary>An operating stop was given; only start leaves it.</summary>
    Stopped = 4,

    /// <summary>A pump-stopping failure stands; only reset leaves it, unless new tries are set.</summary>
    Failed = 5,

    /// <summary>Healthy relay, warning output and lamp are moved in turn, for the test of the wiring; the pump is off.</summary>
    OutputTest = 6,
}
