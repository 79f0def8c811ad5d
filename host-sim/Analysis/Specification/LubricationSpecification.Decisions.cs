namespace LubeController.Analysis.Specification;

/// <summary>What a scan decides, in the order in which it does.</summary>
public sealed partial class LubricationSpecification
{
    /// <summary>Timeouts that have ended, and the limit of one dose.</summary>
    private void JudgeDose()
    {
        if (_state.Phase != Phase.Dose)
            return;
        for (int index = 0; index < _state.Switches.Length; index++)
            JudgeTimeout(ref _state.Switches[index], _settings.Switches[index]);
        if (_state.Dose.PumpOnMs > _settings.DoseLimitMs)
            Begin(AlarmTable.Of(AlarmId.DoseTooLong));
    }

    private void JudgeTimeout(ref SwitchState one, SwitchSettings settings)
    {
        if (one.TimerMs < settings.TimeoutMs)
            return;

        // One timeout is used up; the next begins. Retries and allowance are not renewed by that.
        one.TimerMs = 0;
        if (one.RetriesUsed < settings.Retries)
        {
            one.RetriesUsed++;
            _retry = true;
        }
        else
        {
            Begin(AlarmTable.Of(AlarmId.DividerStalled));
        }
    }

    private void EndDose()
    {
        bool counted = _settings.DoseMode == DoseMode.Cycles && _state.Dose.Count >= _settings.DosePulses;
        bool ran = _settings.DoseMode == DoseMode.RunTime && _state.Dose.PumpOnMs >= _settings.DoseRunMs;
        if (counted || ran)
            Fire(PhaseEvent.DoseOver);
    }

    private void ActOnPresses()
    {
        if (Fresh(Buttons.Acknowledge))
        {
            foreach (AlarmRule rule in AlarmTable.All)
                Fire(rule.Id, LifecycleEvent.Acknowledge);
        }

        if (Fresh(Buttons.Reset))
            Reset();
        if (Fresh(Buttons.Start))
            Fire(PhaseEvent.StartPressed);
        if (Fresh(Buttons.DoseNow))
            Fire(PhaseEvent.DoseNowPressed);
        if (Fresh(Buttons.Prime))
            Fire(PhaseEvent.PrimePressed);
        if (Fresh(Buttons.OutputTest))
            Fire(PhaseEvent.OutputTestPressed);
    }

    private bool Fresh(Buttons button) => (_fresh & button) != 0;

    private void Reset()
    {
        bool tooLong = _state.Alarms[(int)AlarmId.DoseTooLong].Active;
        EndWhatOnlyARunningPumpShows();
        ClearLatches();
        for (int index = 0; index < _state.Switches.Length; index++)
            Renew(index);
        ForgetPosition();

        // The condition of dose-too-long is the pump-on time of this dose: kept, it would fail the dose again at once.
        if (tooLong)
            _state.Dose.PumpOnMs = 0;

        // Reset never starts the pump directly: from failed, whatever is due waits for the restart delay.
        if (_state.Phase == Phase.Failed || (_state.Phase == Phase.Prime && _state.CameFrom == Phase.Failed))
            _state.Clocks.RestartDelayMs = _settings.RestartDelayMs;
        Fire(PhaseEvent.Reset);
        ForgetFailedToReturnTo();
    }

    /// <summary>Prime and new tries return to failed; once nothing pump-stopping stands, that is rest, as for failed itself.</summary>
    private void ForgetFailedToReturnTo()
    {
        if (StandsPumpStopping())
            return;
        _state.Dose.Try = false;
        if (_state.CameFrom == Phase.Failed)
            _state.CameFrom = Phase.Rest;
    }

    private void ActOnTime()
    {
        if (DoseDue)
            Fire(PhaseEvent.DoseDue);
        if (_retry)
            Fire(PhaseEvent.TimeoutRetriesLeft);
        if (_state.Phase == Phase.RetryPause && _state.Clocks.PauseMs == 0)
            Fire(PhaseEvent.PauseOver);
        if (!_state.Levels.Prime.Level || _state.Clocks.LimitedMs >= _settings.PrimeLimitMs)
            Fire(PhaseEvent.PrimeOver);
        if (_state.Phase == Phase.OutputTest && _state.Clocks.LimitedMs >= _settings.OutputTestMs)
            Fire(PhaseEvent.OutputTestOver);
    }

    private void ActOnAlarms()
    {
        if (Stands(AlarmAction.Interlock))
            Fire(PhaseEvent.Interlock);

        // An ordinary dose fails while any dose-ending alarm stands. A new try is given while one stands, so it fails by
        // one that begins now, be it once more.
        if (_state.Dose.Try ? BeganDoseEnding() : Stands(AlarmAction.DoseEnding))
            Fire(PhaseEvent.DoseFails);
        if (StandsFailure())
            Fire(PhaseEvent.OutputTestOver);
    }
}
