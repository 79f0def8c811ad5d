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
            PhaseTable.Rules, () => _state.Phase, phase => _state.Phase = phase, Holds, PhaseWords.Of, Refuse);
        machine.OnTransitioned(transition => Follow(transition.Source, transition.Trigger));
        return machine;
    }

    /// <summary>Lets an event happen to the phase. An empty cell is not even shown to the machine: nothing changes.</summary>
    private void Fire(PhaseEvent happening)
    {
        if (PhaseTable.Rules.Touches((int)happening, (int)_state.Phase))
            _phases.Fire(happening);
    }

    private bool Holds(PhaseGuard guard) => guard switch
    {
        PhaseGuard.Always => true,
        PhaseGuard.NewTriesAndNoInterlock => _settings.NewTries && !Stands(AlarmAction.Interlock),
        PhaseGuard.NotATry => !_state.Dose.Try,
        PhaseGuard.ATry => _state.Dose.Try,
        PhaseGuard.StopOffFailureStands => StopIsOff && StandsPumpStopping(),
        PhaseGuard.StopOffNoFailure => StopIsOff && !StandsPumpStopping(),
        PhaseGuard.StopOn => !StopIsOff,
        PhaseGuard.StopOffNoInterlock => StopIsOff && !Stands(AlarmAction.Interlock),
        PhaseGuard.StopOnOrInterlock => !StopIsOff || Stands(AlarmAction.Interlock),
        PhaseGuard.NoInterlock => !Stands(AlarmAction.Interlock),
        PhaseGuard.InterlockStands => Stands(AlarmAction.Interlock),
        PhaseGuard.NoFailure => !StandsFailure(),
        PhaseGuard.AnyFailure => StandsFailure(),
        PhaseGuard.NoPumpStoppingFailure => !StandsPumpStopping(),
        PhaseGuard.CameFromRest => _state.CameFrom == Phase.Rest,
        PhaseGuard.CameFromStopped => _state.CameFrom == Phase.Stopped,
        PhaseGuard.CameFromFailed => _state.CameFrom == Phase.Failed,
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
        Leave(source);
        switch (happening)
        {
            case PhaseEvent.DoseDue or PhaseEvent.DoseNowPressed:
                BeginDose(isTry: source == Phase.Failed);
                break;
            case PhaseEvent.DoseOver:
                CompleteDose();
                break;
            case PhaseEvent.TimeoutRetriesLeft:
                _state.Clocks.PauseMs = _settings.RetryPauseMs;
                break;
            case PhaseEvent.DoseFails or PhaseEvent.Interlock or PhaseEvent.StopOn or PhaseEvent.PowerUp:
                if (source is Phase.Dose or Phase.RetryPause)
                    InterruptDose();
                if (happening == PhaseEvent.StopOn)
                    ForgetPosition();
                break;
            case PhaseEvent.StartPressed:
                if (_state.Dose.Pending)
                    _state.Clocks.RestartDelayMs = _settings.RestartDelayMs;
                break;
            case PhaseEvent.PrimePressed:
                _state.CameFrom = source;
                ForgetPosition();
                break;
            default:
                break;
        }
    }

    /// <summary>What belongs to one phase alone is forgotten on leaving it, so that equal situations are equal states.</summary>
    private void Leave(Phase source)
    {
        if (source == Phase.RetryPause)
            _state.Clocks.PauseMs = 0;
        if (source is Phase.Prime or Phase.OutputTest)
            _state.Clocks.LimitedMs = 0;
        if (source == Phase.Prime)
            _state.CameFrom = Phase.Rest;
    }

    private void BeginDose(bool isTry)
    {
        ref DoseProgress dose = ref _state.Dose;
        if (!dose.Pending)
        {
            dose.PumpOnMs = 0;
            dose.FirstPulseSeen = false;
        }

        dose.Pending = false;
        dose.Try = isTry;
        _state.Clocks.RestartDelayMs = 0;
    }

    private void InterruptDose()
    {
        _state.Dose.Pending = true;
        _state.Dose.Try = false;
        _state.Clocks.RestartDelayMs = _settings.RestartDelayMs;
    }

    private void CompleteDose()
    {
        _state.Dose = new DoseProgress { PositionKnown = _state.Dose.PositionKnown };
        _state.Clocks.NoRest = false;
        _state.Clocks.RestMs = 0;
        _state.Clocks.RestPulses = 0;
        _state.Clocks.OverdueMs = 0;
        EndWhatOnlyARunningPumpShows();
    }

    /// <summary>Counting opens again at the first pulse, which may use what is left of the first-pulse allowance.</summary>
    private void ForgetPosition()
    {
        _state.Dose.PositionKnown = false;
        _state.Dose.FirstPulseSeen = false;
    }
}
