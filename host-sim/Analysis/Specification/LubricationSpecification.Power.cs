using System;

namespace LubeController.Analysis.Specification;

/// <summary>Power cuts, and power-up with a saved state or without.</summary>
public sealed partial class LubricationSpecification
{
    /// <summary>
    /// Cuts the power and restores it, with the state of the last scan saved. Everything is off until the next scan, whose
    /// elapsed time counts from power-up. Inputs are seen anew; durations, counts and alarms go on. The
    /// power-up is counted, and told where it came too soon or once too often.
    /// </summary>
    public void PowerCut()
    {
        PowerUp();
        NoteRestart();
    }

    private void PowerUp()
    {
        Fire(PhaseEvent.PowerUp);
        _state.Dose.Try = false;
        _state.Clocks.PhaseMs = 0;
        _state.Pump = false;
        _state.Levels = default;
        foreach (ref SwitchState one in _state.Switches.AsSpan())
        {
            one.Filter = default;
            one.Chatter = default;
        }

        _state.Clocks.ReadyMs = _settings.ReadyDelayMs;
        _state.Clocks.ShaftStillMs = 0;
        _state.Clocks.RunDownMs = 0;
        _state.Held.ShaftTurnsOn = false;
        Outputs = new SpecOutputs(_state.Phase, false, false, false, false, false, false, false, Buttons.None, _state.FirstUp);
    }

    /// <summary>Cuts the power and restores it, with an older state saved.</summary>
    /// <param name="saved">What the memory holds.</param>
    /// <exception cref="ArgumentException">The state belongs to settings with another number of switches.</exception>
    public void PowerCut(SpecState saved)
    {
        Restore(saved);
        PowerCut();
    }

    /// <summary>Cuts the power and restores it, with no valid state found: the rest is the restart delay.</summary>
    public void PowerCutWithoutState()
    {
        _state = NoValidState();
        PowerUp();
    }

    /// <summary>The main loop tells, at power-up, what ended the last run: <c>logic-fault</c> or <c>storage-corrupt</c>.</summary>
    /// <param name="alarm">Which of them.</param>
    public void NoteAtPowerUp(AlarmId alarm)
    {
        bool waited = AnyWaits;
        _began = _raised = 0;
        Touch(alarm);
        SuppressConsequences();
        MarkFirstUp(waited);
    }

    /// <summary>A dose is due: it waits for the restart delay only.</summary>
    private SpecState NoValidState()
    {
        var state = new SpecState(_settings.Switches.Count)
        {
            Dose = { Pending = true },
            Clocks = { PumpOffMs = JustBeyondRunOnMs },
        };
        foreach (ref SwitchState one in state.Switches.AsSpan())
            one.SinceOnMs = one.SinceOffMs = _settings.ShortestPulseIntervalMs;
        if (_settings.DoseEndingSwitch < state.Switches.Length)
            state.Switches[_settings.DoseEndingSwitch].AllowanceMs = _settings.FirstPulseAllowanceMs;
        return state;
    }
}
