using System;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>The phase machine: its conditions, and what a transition does beside changing the phase.</summary>
public sealed partial class LubricationSpecification
{
    private bool StopIsOff => _state.Levels.Stop.Known && !_state.Levels.Stop.Level;

    private StateMachine<Phase, PhaseEvent> PhaseMachine()
    {
        StateMachine<Phase, PhaseEvent> machine = TableMachine.Build(
            _tables.Phases, () => _state.Phase, phase => _state.Phase = phase, Holds, PhaseWords.Of, Refuse);
        machine.OnTransitioned(transition => Follow(transition.Source, transition.Trigger));
        return machine;
    }

    /// <summary>Lets an event happen to the phase. An empty cell is not even shown to the machine: nothing changes.</summary>
    private void Fire(PhaseEvent happening)
    {
        if (_tables.Phases.Touches((int)happening, (int)_state.Phase))
            _phases.Fire(happening);
    }

    private bool Holds(PhaseGuard guard) => guard switch
    {
        PhaseGuard.Always => true,
        PhaseGuard.NewTriesStopOffNoInterlock => _settings.NewTries && StopIsOff && !Stands(AlarmAction.Interlock),
        PhaseGuard.StopOffFailureStands => StopIsOff && StandsPumpStopping(),
        PhaseGuard.StopOffNoFailure => StopIsOff && !StandsPumpStopping(),
        PhaseGuard.StopOn => !StopIsOff,
        PhaseGuard.StopOffNoInterlock => StopIsOff && !Stands(AlarmAction.Interlock),
        PhaseGuard.StopOnOrInterlock => !StopIsOff || Stands(AlarmAction.Interlock),
        PhaseGuard.StopOffNoFailureAtAll => StopIsOff && !StandsFailure(),
        PhaseGuard.StopOnOrFailure => !StopIsOff || StandsFailure(),
        PhaseGuard.NoPumpStoppingFailure => !StandsPumpStopping(),
        PhaseGuard.PumpStoppingFailure => StandsPumpStopping(),
        PhaseGuard.CameFromRest => _state.CameFrom == Phase.Rest,
        PhaseGuard.CameFromStopped => _state.CameFrom == Phase.Stopped,
        PhaseGuard.CameFromFailed => _state.CameFrom == Phase.Failed,
        PhaseGuard.CameFromFailedFailureStands => _state.CameFrom == Phase.Failed && StandsPumpStopping(),
        PhaseGuard.CameFromFailedNoFailure => _state.CameFrom == Phase.Failed && !StandsPumpStopping(),
        _ => throw new ArgumentOutOfRangeException(nameof(guard), guard, "Not a condition."),
    };

    private void Refuse(PhaseEvent press) => _refused |= press switch
    {
        PhaseEvent.StartPressed => Buttons.Start,
        PhaseEvent.DoseNowPressed => Buttons.DoseNow,
        PhaseEvent.PrimePressed => Buttons.Prime,
        PhaseEvent.OutputTestPressed => Buttons.OutputTest,
        _ => throw new ArgumentOutOfRangeException(nameof(press), press, "Only a press can be refused."),
    };

    private void Follow(Phase source, PhaseEvent happening)
    {
        ref Clocks clocks = ref _state.Clocks;
        Phase cameFrom = _state.CameFrom;
        if (_state.Phase != source)
        {
            clocks.AfterFailure &= source == Phase.Prime || _state.Phase == Phase.Prime;
            clocks.PhaseMs = 0;
        }

        if (source == Phase.Prime)
            _state.CameFrom = Phase.Rest;
        switch (happening)
        {
            case PhaseEvent.DoseDue or PhaseEvent.DoseNowPressed:
                BeginDose(isTry: source == Phase.Failed);
                break;
            case PhaseEvent.DoseOver:
                CompleteDose();
                break;
            case PhaseEvent.TimeoutRetriesLeft:
                InterruptStep();
                break;
            case PhaseEvent.PauseOver:
                GoOnWithStep();
                break;
            case PhaseEvent.DoseFails or PhaseEvent.Interlock or PhaseEvent.StopOn or PhaseEvent.PowerUp:
                if (source is Phase.Dose or Phase.RetryPause)
                    InterruptDose();
                if (happening == PhaseEvent.StopOn)
                    ForgetPosition();
                break;
            case PhaseEvent.Reset:
                clocks.AfterFailure = true;
                break;
            case PhaseEvent.PrimeOver:
                clocks.AfterFailure |= cameFrom == Phase.Failed && _state.Phase == Phase.Rest;
                break;
            case PhaseEvent.PrimePressed:
                _state.CameFrom = source;
                ForgetPosition();
                break;
            default:
                break;
        }
    }

    private void BeginDose(bool isTry)
    {
        ref DoseProgress dose = ref _state.Dose;
        if (!dose.Pending)
            dose.PumpOnMs = 0;
        dose.Pending = false;
        dose.Try = isTry;
        if (isTry)
        {
            _beganBeforeTry = _began;
            GrantTry();
        }

        AllowFirstPulse();
        GoOnWithStep();
    }

    /// <summary>A new try has one timeout with allowance, no retries, and times of its own, since its timers have run out already.</summary>
    private void GrantTry()
    {
        _state.Dose.PumpOnMs = 0;
        _state.Dose.PressureMissingMs = 0;
        _state.Line.VentingMs = 0;
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            ref SwitchState one = ref _state.Switches[index];
            one.RetriesUsed = _settings.Switches[index].Retries;
            one.TimerMs = (long)one.RetriesUsed * _settings.Switches[index].TimeoutMs;
            one.AllowanceMs = 0;
        }
    }

    private void InterruptDose()
    {
        _state.Dose.Pending = true;
        _state.Dose.Try = false;
        InterruptStep();
    }

    private void CompleteDose()
    {
        _completed = true;
        if (_state.Dose.Try)
            EndWhatOnlyARunningPumpShows();
        _state.Dose = new DoseProgress
        {
            PositionKnown = _settings.DoseMode == DoseMode.Cycles && _state.Dose.PositionKnown,
            PressureMissingMs = _state.Dose.PressureMissingMs,
        };
        _state.Line = new LineState { VentedMs = _state.Line.VentedMs };
        _state.Clocks.RestMs = 0;
        _state.Clocks.RestPulses = 0;
        _state.Clocks.OverdueMs = 0;
        Judge(RuleOf(AlarmId.LubricationOverdue));
    }

    /// <summary>Counting opens again at the first pulse.</summary>
    private void ForgetPosition() => _state.Dose.PositionKnown = false;
}
