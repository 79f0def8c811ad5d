namespace LubeController.Analysis.Specification;

/// <summary>What a scan decides, in the order in which it does.</summary>
public sealed partial class LubricationSpecification
{
    /// <summary>A dose that was held goes on with the supply, and its first pulse is awaited anew.</summary>
    private void ObeyHolding()
    {
        bool held = Stands(AlarmAction.Holding);
        if (held == _state.Held.PumpHeld)
            return;
        _state.Held.PumpHeld = held;
        if (_state.Phase != Phase.Dose)
            return;
        if (held)
        {
            InterruptStep();
        }
        else
        {
            GoOnWithStep();
            AllowFirstPulse();
        }
    }

    /// <summary>The end of a dose, the limits of one, and timeouts that have ended.</summary>
    private void JudgeDose()
    {
        if (_state.Phase != Phase.Dose || Stands(AlarmAction.Holding))
            return;
        if (ByPressure)
            JudgeStep();
        bool ran = _settings.DoseMode == DoseMode.RunTime && _state.Dose.PumpOnMs >= _settings.DoseRunMs;
        bool vented = ByPressure && _state.Line.Cycles >= _settings.PressureCycles;
        if (ran || vented)
        {
            Fire(PhaseEvent.DoseOver);
            return;
        }

        if (ByPressure)
            JudgeVenting();
        if (ByPressure && !StepPumps)
            return;
        if (_state.Dose.PumpOnMs >= _settings.DoseLimitMs)
            FailDose(AlarmId.DoseTooLong);
        if (_settings.PressureMissingMs > 0 && _state.Dose.PressureMissingMs >= _settings.PressureMissingMs)
            FailDose(AlarmId.LinePressureMissing);
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            if (TimerIsJudged(index))
                JudgeTimeout(ref _state.Switches[index], _settings.Switches[index]);
        }
    }

    /// <summary>
    /// A timeout is over when the timer reaches retries used + 1 timeouts, plus the allowance: so the allowance counts once
    /// between two edges, whatever happens in between.
    /// </summary>
    private void JudgeTimeout(ref SwitchState one, SwitchSettings settings)
    {
        if (one.TimerMs < one.AllowanceMs + ((one.RetriesUsed + 1L) * settings.TimeoutMs))
            return;
        if (one.RetriesUsed < settings.Retries)
        {
            one.RetriesUsed++;
            Fire(PhaseEvent.TimeoutRetriesLeft);
        }
        else
        {
            FailDose(AlarmId.DividerStalled);
        }
    }

    private void ActOnPresses()
    {
        if (Fresh(Buttons.Acknowledge))
        {
            foreach (AlarmRule rule in _tables.Alarms)
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
        if (_state.Held.PumpStill)
            EndPumpStill();
        _state.Clocks.PumpStillMs = 0;
        EndProofs();
        EndDisagreement();
        ClearLatches();
        BelieveWhereFaultIsCleared();
        for (int index = 0; index < _state.Switches.Length; index++)
            Renew(index, index == _settings.DoseEndingSwitch ? _settings.FirstPulseAllowanceMs : 0);
        _state.Dose.PressureMissingMs = 0;
        _state.Line.VentingMs = 0;
        ForgetPosition();

        // The condition of dose-too-long is the pump-on time of this dose: kept, it would fail the dose again at once.
        if (tooLong)
            _state.Dose.PumpOnMs = 0;
        Fire(PhaseEvent.Reset);
    }

    /// <summary>That the pump stands still, too, only a running pump can show; the contact shows it all the time.</summary>
    private void EndPumpStill()
    {
        _state.Held.PumpStill = false;
        if (Accepted(_state.Levels.Overload) == false)
            EndAtOnce(AlarmId.PumpOverload);
    }

    private void ActOnTime()
    {
        if (!_state.Levels.Prime.Level || _state.Clocks.PhaseMs >= _settings.PrimeLimitMs)
            Fire(PhaseEvent.PrimeOver);
        if (DoseDue)
            Fire(PhaseEvent.DoseDue);
        if (_state.Phase == Phase.RetryPause && _state.Clocks.PhaseMs >= _settings.RetryPauseMs)
            Fire(PhaseEvent.PauseOver);
        if (_state.Phase == Phase.OutputTest && _state.Clocks.PhaseMs >= _settings.OutputTestMs)
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
