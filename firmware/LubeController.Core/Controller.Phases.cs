namespace LubeController.Core;

/// <content>The phase table: what each event does in each phase. Its text stands in <c>firmware/PHASES.md</c>.</content>
public sealed partial class Controller
{
    /// <summary>Rest runs on in every phase, and where a turning shaft belies a machine said to stand, once a dose is completed; an interrupted dose waits for its restart delay instead.</summary>
    private bool RestCounts =>
        !_dose.Pending && (_held.MachineRunning || _shaft.IsContradicted || !_settings.Is(SettingField.RestOnlyWhileRunning));

    /// <summary>Whether the end of the rest would do anything in this phase.</summary>
    private bool RestMatters => Phase == Phase.Rest || (Phase == Phase.Failed && TriesAgain);

    /// <summary>A user's rule is asked in every phase, so that rule-fault does not depend on when it is looked for.</summary>
    private bool RestIsWatched => RestMatters || _settings.RestMode == RestMode.Rule;

    private bool TriesAgain => _settings[SettingField.NewTryDelayMs] > 0 && !Alarms.InterlockStands;

    private bool RestIsOver
    {
        get
        {
            if (DelayCounts && _phaseMs < DelayMs)
                return false;
            return _dose.Pending || _rest.IsOver(Alarms.IsActive(AlarmId.ShaftSignalLost));
        }
    }

    /// <summary>A pending dose waits, and a reset must not start the pump although the rest may be over.</summary>
    private bool DelayCounts => _dose.Pending || _afterFailure;

    private int DelayMs => _settings[Phase == Phase.Failed ? SettingField.NewTryDelayMs : SettingField.RestartDelayMs];

    private void Decide()
    {
        if (!_line.Chosen)
            _line.Clear();
        JudgeConditions();
        ObeyHolding();
        JudgeDose();
        TakePresses();
        if (Phase == Phase.Prime && (!_primeButton.Held || _phaseMs >= _settings[SettingField.PrimeLimitMs]))
            LeavePrime();
        if (RestMatters && RestIsOver && PumpMayStart)
            BeginDose(Phase == Phase.Failed);
        if (Phase == Phase.RetryPause && _phaseMs >= _settings[SettingField.RetryPauseMs])
            Enter(Phase.Dose);
        if (Phase == Phase.OutputTest && (_phaseMs >= _settings[SettingField.OutputTestMs] || Alarms.FailureStands))
            Enter(Phase.Stopped);
        JudgeRule();
        ObeyAlarms();
        if (_inputs.Stop && Phase != Phase.Stopped)
            StopNow();
    }

    private void JudgeDose()
    {
        if (Phase != Phase.Dose || Alarms.HoldingStands)
            return;
        if (_settings.DoseMode == DoseMode.RunTime && _dose.IsComplete)
        {
            CompleteDose();
            return;
        }

        if (_line.Chosen)
        {
            if (_line.Judge())
                AllowFirstPulse();
            if (_line.IsComplete)
            {
                CompleteDose();
                return;
            }

            if (_line.IsNotVented)
            {
                FailDose(AlarmId.LineNotVented);
                _line.Abandon();
            }

            // What follows is judged by pump-on time.
            if (!_line.PumpRuns)
                return;
        }

        if (_dose.IsTooLong)
            FailDose(AlarmId.DoseTooLong);
        if (_pressure.IsMissing)
            FailDose(AlarmId.LinePressureMissing);
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
        {
            if (!_switches[index].TimeoutOver)
                continue;
            if (!_switches[index].RetryLeft)
            {
                FailDose(AlarmId.DividerStalled);
            }
            else
            {
                _switches[index].UseRetry();
                Enter(Phase.RetryPause);
            }
        }
    }

    private void FailDose(AlarmId id)
    {
        Alarms.Hold(id);
        _doseFails = true;
    }

    private void ObeyAlarms()
    {
        bool doseRuns = Phase == Phase.Dose || Phase == Phase.RetryPause;
        bool interlocked = Alarms.InterlockStands && (doseRuns || Phase == Phase.Rest || Phase == Phase.Prime);
        bool doseEnds = doseRuns && (_doseFails || (Alarms.DoseEndingStands && !_trying));
        // A reset out of failed leads to rest: from stopped that would take the operating stop off without a start.
        if (interlocked || doseEnds)
            Enter(Phase == Phase.Prime && _primeFrom == Phase.Stopped ? Phase.Stopped : Phase.Failed);

        // New settings may make another switch the dose-ending one, and what stood for it stop the pump no more.
        if (Phase == Phase.Failed && !Alarms.PumpStoppingStands)
            EnterRestAfterFailure();
    }

    private void BeginDose(bool newTry)
    {
        _dose.Begin();
        _trying = newTry;
        AllowFirstPulse();
        if (newTry)
        {
            // What was found before the try began is why it is one.
            _doseFails = false;

            // The failure stands already, so a try is given a timeout and a pump-on time of its own; else it would end at once.
            _dose.RenewPumpOn();
            _pressure.Renew();
            _line.Renew();
            for (int index = 0; index < _switches.Length; index++)
                _switches[index].GrantTry(index == _settings.DoseEndingIndex ? _settings[SettingField.FirstPulseAllowanceMs] : 0);
        }

        Enter(Phase.Dose);
    }

    private void AllowFirstPulse() =>
        _switches[_settings.DoseEndingIndex].Allow(_settings[SettingField.FirstPulseAllowanceMs]);

    private void CompleteDose()
    {
        Events.Add(ScanEvent.DoseCompleted, _line.Chosen ? _line.Cycles : _dose.Edges, 0);
        DosesCompleted = Saturating.Add(DosesCompleted, 1);
        _overdueMs = 0;
        Alarms.SetCondition(AlarmId.LubricationOverdue, false);
        _dose.End();
        _line.End();
        _rest.Begin();
        _rest.Ask(_inputs);
        if (_trying)
            EndShownByPump();
        Enter(Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest);
    }

    /// <summary>Ends the conditions that only a running dose can show; latched, the alarms stand on.</summary>
    private void EndShownByPump()
    {
        Alarms.EndAtOnce(AlarmId.DividerStalled);
        Alarms.EndAtOnce(AlarmId.DoseTooLong);
        Alarms.EndAtOnce(AlarmId.LinePressureMissing);
        Alarms.EndAtOnce(AlarmId.LineNotVented);
    }

    private void TakePresses()
    {
        int debounceMs = _settings[SettingField.ButtonDebounceMs];
        if (_acknowledgeButton.Sample(_inputs.Acknowledge, debounceMs))
            Acknowledge();
        if (_resetButton.Sample(_inputs.Reset, debounceMs))
            Reset();
        if (_startButton.Sample(_inputs.Start, debounceMs))
            Answer(Button.Start, Phase == Phase.Stopped && !_inputs.Stop);
        if (_doseNowButton.Sample(_inputs.DoseNow, debounceMs))
            Answer(Button.DoseNow, Phase == Phase.Rest && PumpMayStart);
        if (_primeButton.Sample(_inputs.Prime, debounceMs))
            Answer(Button.Prime, MayPrime);
        if (_testButton.Sample(_inputs.OutputTest, debounceMs) && Phase != Phase.OutputTest)
            Answer(Button.OutputTest, Phase == Phase.Stopped && !_inputs.Stop && !Alarms.FailureStands);
    }

    private bool MayPrime =>
        PumpMayStart && (Phase == Phase.Rest || Phase == Phase.Stopped || Phase == Phase.Failed);

    /// <summary>Told in the scan in which stop or an interlock comes, too, before the phase has followed.</summary>
    private bool PumpMayStart => !_inputs.Stop && !Alarms.InterlockStands;

    private void Answer(Button button, bool obeyed)
    {
        if (!obeyed)
        {
            PressesRefused = Saturating.Add(PressesRefused, 1);
            Events.Add(ScanEvent.PressRefused, (int)button, 0);
            return;
        }

        Events.Add(ScanEvent.PressObeyed, (int)button, 0);
        switch (button)
        {
            case Button.Start:
                Enter(Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest);
                break;
            case Button.DoseNow:
                BeginDose(false);
                break;
            case Button.OutputTest:
                Enter(Phase.OutputTest);
                break;
            default:
                _primeFrom = Phase;
                _dose.ForgetPosition();
                Enter(Phase.Prime);
                break;
        }
    }

    private void Acknowledge()
    {
        Events.Add(ScanEvent.PressObeyed, (int)Button.Acknowledge, 0);
        Alarms.Acknowledge();
    }

    private void Reset()
    {
        Events.Add(ScanEvent.PressObeyed, (int)Button.Reset, 0);
        bool tooLong = Alarms.IsActive(AlarmId.DoseTooLong);
        EndShownByPump();
        EndSwitchProofs();
        if (tooLong)
            _dose.RenewPumpOn();
        _pressure.Renew();
        _line.Renew();
        RenewPump();
        RenewComparison();
        _rest.TrustRule();
        if (!_dose.Pending)
            _rest.Ask(_inputs);
        if (!_rest.RuleFailed)
            Alarms.EndAtOnce(AlarmId.RuleFault);
        _dose.ForgetPosition();
        RenewSwitches();
        Alarms.ClearLatches();
        if (!Alarms.Stands(AlarmId.CycleSwitchFault))
            TrustSwitches();
        _doseFails &= Alarms.DoseEndingStands;
        if (Phase == Phase.Failed && !Alarms.PumpStoppingStands)
            EnterRestAfterFailure();
    }

    /// <summary>Whether a silent switch is wrong, too, only a running pump can show.</summary>
    private void EndSwitchProofs()
    {
        bool chatters = false;
        bool proved = false;
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
        {
            proved |= _switches[index].ProvedWrong;
            _switches[index].EndProof();
            chatters |= _switches[index].Chatters;
        }

        if (proved && !chatters)
            Alarms.EndAtOnce(AlarmId.CycleSwitchFault);
    }

    private void TrustSwitches()
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Distrusted = false;
        Alarms.SetSwitchFault(false);
    }

    private void RenewSwitches()
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Renew(index == _settings.DoseEndingIndex ? _settings[SettingField.FirstPulseAllowanceMs] : 0);
    }

    /// <summary>Back to the phase prime came from; failed only while a pump-stopping failure stands.</summary>
    private void LeavePrime()
    {
        if (_primeFrom == Phase.Failed && !Alarms.PumpStoppingStands)
            EnterRestAfterFailure();
        else
            Enter(_primeFrom);
    }

    private void EnterRestAfterFailure()
    {
        Enter(Phase.Rest);
        _afterFailure = true;
    }

    private void StopNow()
    {
        _dose.ForgetPosition();
        Enter(Phase.Stopped);
    }

    /// <summary>That the pump stands still only a running pump can show; the contact shows it all the time.</summary>
    private void RenewPump()
    {
        bool still = _pump.IsStill;
        _pump.Renew();
        if (still && _pump.IsKnown && !_pump.IsOverloaded)
            Alarms.EndAtOnce(AlarmId.PumpOverload);
    }

    /// <summary>That volume or pressure and pulses disagree only a running pump can show.</summary>
    private void RenewComparison()
    {
        _compare.Renew();
        if (!_shaft.IsContradicted)
            Alarms.EndAtOnce(AlarmId.SensorsDisagree);
    }

    /// <summary>The output test has four parts of one length.</summary>
    private int TestPartMs => _settings[SettingField.OutputTestMs] / 4;

    private int TestPart => Phase == Phase.OutputTest ? SafeDivide.Quotient(_phaseMs, TestPartMs) : NoTest;

    private int TestDeadlineMs => Saturating.Min(
        Saturating.Remaining(_settings[SettingField.OutputTestMs], _phaseMs),
        Saturating.Remaining((TestPart + 1) * TestPartMs, _phaseMs));

    private void NoteAtPowerUp(AlarmId id)
    {
        TakeUp();
        Alarms.Touch(id);
    }

    private void PowerUpPhase()
    {
        _trying = false;
        _phaseMs = 0;
        _line.Interrupt();
        if (Phase == Phase.Prime)
            Phase = _primeFrom == Phase.Failed && !Alarms.PumpStoppingStands ? Phase.Rest : _primeFrom;
        if (Phase == Phase.Dose || Phase == Phase.RetryPause)
            Phase = Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest;
        if (Phase == Phase.OutputTest)
            Phase = Phase.Stopped;
    }

    private void Enter(Phase next)
    {
        if (Phase == next)
            return;
        Events.Add(ScanEvent.PhaseChanged, (int)Phase, (int)next);
        if (next != Phase.Dose && next != Phase.RetryPause)
            _trying = false;
        _afterFailure &= next == Phase.Prime || Phase == Phase.Prime;
        Phase = next;
        _phaseMs = 0;
        if (!_line.Chosen)
            return;
        if (next != Phase.Dose)
            _line.Interrupt();
        else if (_line.Begin())
            AllowFirstPulse();
    }

    private int PhaseDeadlineMs()
    {
        switch (Phase)
        {
            case Phase.Dose when _pumpHeld:
                return Saturating.Never;
            case Phase.Dose when _line.Chosen:
                return _line.PumpRuns ? Saturating.Min(_dose.DeadlineMs(), _line.DeadlineMs()) : _line.DeadlineMs();
            case Phase.Dose:
                return _dose.DeadlineMs();
            case Phase.RetryPause:
                return Saturating.Remaining(_settings[SettingField.RetryPauseMs], _phaseMs);
            case Phase.OutputTest:
                return Saturating.Min(TestDeadlineMs, RestDeadlineMs());
            case Phase.Prime:
                return Saturating.Min(Saturating.Remaining(_settings[SettingField.PrimeLimitMs], _phaseMs), RestDeadlineMs());
            default:
                return RestDeadlineMs();
        }
    }

    private int RestDeadlineMs()
    {
        int deadline = Saturating.Never;
        if (RestMatters && DelayCounts && _phaseMs < DelayMs)
            deadline = DelayMs - _phaseMs;
        if (RestCounts && RestIsWatched)
            deadline = Saturating.Min(deadline, _rest.DeadlineMs(Alarms.IsActive(AlarmId.ShaftSignalLost)));
        return deadline;
    }
}
