using System;
using Stateless;
using Stateless.Reflection;

namespace LubeController.Analysis.Specification;

/// <summary>The phase, and how long it has lasted.</summary>
internal sealed class Phases
{
    private readonly SpecSettings _settings;
    private readonly SpecState _state;
    private readonly SpecScan _scan;
    private readonly SpecReadings _readings;
    private readonly SpecMisreadings _misread;
    private readonly StandingAlarms _standing;
    private readonly StateMachine<Phase, PhaseEvent> _machine;

    internal Phases(SpecSettings settings, SpecState state, SpecScan scan, StandingAlarms standing, SpecReadings readings, SpecMisreadings misread)
    {
        _settings = settings;
        _state = state;
        _scan = scan;
        _standing = standing;
        _readings = readings;
        _misread = misread;
        _machine = PhaseMachine.Build(() => state.Phase, phase => state.Phase = phase, new PhaseFacts(settings, state, standing), Refuse);
    }

    /// <summary>What the machine says of itself.</summary>
    internal StateMachineInfo Info => _machine.GetInfo();

    /// <summary>Time in the phase beyond which nothing changes.</summary>
    private int LongestMs => _state.Phase switch
    {
        Phase.Rest => _settings.RestartDelayMs,
        Phase.Failed => _settings.NewTryDelayMs,
        Phase.RetryPause => _settings.RetryPauseMs,
        Phase.Prime => _settings.PrimeLimitMs,
        Phase.OutputTest => _settings.OutputTestMs,
        _ => 0,
    };

    /// <summary>Says what is called after every transition, with the phase left and what happened.</summary>
    internal void OnTransitioned(Action<Phase, PhaseEvent> follow) =>
        _machine.OnTransitioned(transition => follow(transition.Source, transition.Trigger));

    /// <summary>Lets something happen to the phase.</summary>
    internal void Fire(PhaseEvent happening)
    {
        if (_misread.Phases(_state.Phase, happening) is PhaseEvent heard)
            _machine.Fire(heard);
    }

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (_readings.PauseRunsOnWhileHeld || _state.Phase != Phase.RetryPause || !_standing.Any(AlarmAction.Holding))
            _state.PhaseMs = Durations.More(_state.PhaseMs, elapsedMs, LongestMs);
    }

    /// <summary>What ends with time, or with the release of a button.</summary>
    /// <param name="rest">Says when a dose is due.</param>
    internal void EndInTime(RestClock rest)
    {
        if (_state.Phase == Phase.Prime && (!_state.Levels.Prime.Level || _state.PhaseMs >= _settings.PrimeLimitMs))
            Fire(PhaseEvent.PrimeOver);
        if (_state.Phase is Phase.Rest or Phase.Failed && rest.DoseIsDue)
            Fire(PhaseEvent.DoseDue);
        if (_state.Phase == Phase.RetryPause && _state.PhaseMs >= _settings.RetryPauseMs)
            Fire(PhaseEvent.PauseOver);
        if (_state.Phase == Phase.OutputTest && _state.PhaseMs >= _settings.OutputTestMs)
            Fire(PhaseEvent.OutputTestOver);
    }

    /// <summary>What alarms do to the phase.</summary>
    internal void ObeyAlarms()
    {
        if (_standing.Any(AlarmAction.Interlock))
            Fire(PhaseEvent.Interlock);

        // An ordinary dose fails while any dose-ending alarm stands. A new try is given while one stands, so it fails by
        // one that begins now, be it once more.
        if (_state.Dose.Try ? _standing.DoseEndingBegan : _standing.Any(AlarmAction.DoseEnding))
            Fire(PhaseEvent.DoseFails);
        if (_state.Phase == Phase.OutputTest && _standing.AnyFailure)
            Fire(PhaseEvent.OutputTestOver);
    }

    private void Refuse(PhaseEvent press) => _scan.Refused |= press switch
    {
        PhaseEvent.StartPressed => Buttons.Start,
        PhaseEvent.DoseNowPressed => Buttons.DoseNow,
        PhaseEvent.PrimePressed => Buttons.Prime,
        PhaseEvent.OutputTestPressed => Buttons.OutputTest,
        _ => throw new ArgumentOutOfRangeException(nameof(press), press, "Only a press can be refused."),
    };
}
