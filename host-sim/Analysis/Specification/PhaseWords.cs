using System;

namespace LubeController.Analysis.Specification;

/// <summary>The words a person reads for phases, events and conditions: in states, messages and diagrams alike.</summary>
public static class PhaseWords
{
    /// <summary>The phase's name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such phase.</exception>
    public static string NameOf(Phase phase) => phase switch
    {
        Phase.Rest => "rest",
        Phase.Dose => "dose",
        Phase.RetryPause => "retry pause",
        Phase.Prime => "prime",
        Phase.Stopped => "stopped",
        Phase.Failed => "failed",
        Phase.OutputTest => "output test",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Not a phase."),
    };

    /// <summary>The event's words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such event.</exception>
    public static string NameOf(PhaseEvent happening) => happening switch
    {
        PhaseEvent.DoseDue => "rest over, or restart delay over with a dose pending",
        PhaseEvent.DoseOver => "dose counted, or run time over",
        PhaseEvent.TimeoutRetriesLeft => "pulse timeout, retries left",
        PhaseEvent.DoseFails => "pulse timeout, none left; any dose-ending alarm",
        PhaseEvent.PauseOver => "pause over",
        PhaseEvent.Interlock => "interlock alarm",
        PhaseEvent.StopOn => "stop on",
        PhaseEvent.StartPressed => "start pressed",
        PhaseEvent.DoseNowPressed => "dose-now",
        PhaseEvent.PrimePressed => "prime pressed",
        PhaseEvent.PrimeOver => "prime released, or its limit",
        PhaseEvent.OutputTestPressed => "output test pressed",
        PhaseEvent.OutputTestOver => "output test over",
        PhaseEvent.Reset => "reset",
        PhaseEvent.PowerUp => "power-up after a cut in this phase",
        _ => throw new ArgumentOutOfRangeException(nameof(happening), happening, "Not an event."),
    };
}
