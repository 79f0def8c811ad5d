namespace LubeController.Core;

/// <content>The phase table: what each event does in each phase. Its text stands in <c>firmware/PHASES.md</c>.</content>
public sealed partial class Controller
{
    /// <summary>Rest runs on in every phase once a dose is completed; an interrupted dose waits for its restart delay instead.</summary>
    private bool RestCounts =>
        !_dose.Pending && (_held.MachineRunning || !_settings.Is(SettingField.RestOnlyWhileRunning));

    /// <summary>Whether the end of the rest would do anything in this phase.</summary>
    private bool RestMatters => Phase == Phase.Rest || (Phase == Phase.Failed && TriesAgain);

    private bool TriesAgain => _settings[SettingField.NewTryDelayMs] > 0 && !Alarms.InterlockStands;

    private bool RestIsOver
    {
        get
        {
            if (!_dose.Pending)
                return _rest.IsOver(Alarms.IsActive(AlarmId.ShaftSignalLost));
            return _phaseMs >= _settings[Phase == Phase.Failed ? SettingField.NewTryDelayMs : SettingField.RestartDelayMs];
        }
    }

    private void Decide()
    {
        JudgeConditions();
        JudgeDose();
        TakePresses();
        if (Phase == Phase.Prime && (!_primeButton.Held || _phaseMs >= _settings[SettingField.PrimeLimitMs]))
            LeavePrime();
        if (RestMatters && RestIsOver)
            BeginDose(Phase == Phase.Failed);
        if (Phase == Phase.RetryPause && _phaseMs >= _settings[SettingField.RetryPauseMs])
            Enter(Phase.Dose);
        JudgeRule();
        ObeyAlarms();
        if (_inputs.Stop && Phase != Phase.Stopped)
            StopNow();
    }

    private void JudgeDose()
    {
        if (Phase != Phase.Dose)
            return;
        if (_settings.DoseMode == DoseMode.RunTime && _dose.IsComplete)
        {
            CompleteDose();
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
        if (interlocked || doseEnds)
            Enter(Phase.Failed);
    }

    private void BeginDose(bool newTry)
    {
        _dose.Begin();
        _trying = newTry;
        if (newTry)
        {
            // The failure stands already, so a try is given a timeout and a pump-on time of its own; else it would end at once.
            _dose.RenewPumpOn();
            _pressure.Renew();
            for (int index = 0; index < _switches.Length; index++)
                _switches[index].GrantTry(index == _settings.DoseEndingIndex ? _settings[SettingField.FirstPulseAllowanceMs] : 0);
        }

        Enter(Phase.Dose);
    }

    private void CompleteDose()
    {
        Events.Add(ScanEvent.DoseCompleted, _dose.Edges, 0);
        DosesCompleted = Saturating.Add(DosesCompleted, 1);
        _overdueMs = 0;
        Alarms.SetCondition(AlarmId.LubricationOverdue, false);
        Alarms.Settle();
        _dose.End();
        _rest.Begin();
        _rest.Ask(_inputs);
        _switches[_settings.DoseEndingIndex].Allow(_settings[SettingField.FirstPulseAllowanceMs]);
        if (_trying)
            EndShownByPump();
        Enter(Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest);
    }

    /// <summary>Ends the conditions that only a running pump can show; latched, the alarms stand on.</summary>
    private void EndShownByPump()
    {
        Alarms.EndAtOnce(AlarmId.DividerStalled);
        Alarms.EndAtOnce(AlarmId.DoseTooLong);
        Alarms.EndAtOnce(AlarmId.LinePressureMissing);
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
            Answer(Button.DoseNow, Phase == Phase.Rest);
        if (_primeButton.Sample(_inputs.Prime, debounceMs))
            Answer(Button.Prime, MayPrime);
    }

    private bool MayPrime => Phase == Phase.Rest
        || (Phase == Phase.Stopped && !_inputs.Stop && !Alarms.InterlockStands)
        || (Phase == Phase.Failed && !Alarms.InterlockStands);

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
        _rest.TrustRule();
        if (!_rest.RuleFailed)
            Alarms.EndAtOnce(AlarmId.RuleFault);
        _dose.ForgetPosition();
        RenewSwitches();
        Alarms.ClearLatches();
        if (!Alarms.Stands(AlarmId.CycleSwitchFault))
            TrustSwitches();
        if (Phase == Phase.Failed && !Alarms.PumpStoppingStands)
            Enter(Phase.Rest);
    }

    /// <summary>Whether a silent switch is wrong, too, only a running pump can show.</summary>
    private void EndSwitchProofs()
    {
        bool chatters = false;
        for (int index = 0; index < _switches.Length; index++)
        {
            _switches[index].EndProof();
            chatters |= _switches[index].Chatters;
        }

        if (!chatters)
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
    private void LeavePrime() =>
        Enter(_primeFrom == Phase.Failed && !Alarms.PumpStoppingStands ? Phase.Rest : _primeFrom);

    private void StopNow()
    {
        _dose.ForgetPosition();
        Enter(Phase.Stopped);
    }

    private void PowerUpPhase()
    {
        _trying = false;
        _phaseMs = 0;
        if (Phase == Phase.Prime)
            Phase = _primeFrom;
        if (Phase == Phase.Dose || Phase == Phase.RetryPause)
            Phase = Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest;
    }

    private void Enter(Phase next)
    {
        if (Phase == next)
            return;
        Events.Add(ScanEvent.PhaseChanged, (int)Phase, (int)next);
        if (next != Phase.Dose && next != Phase.RetryPause)
            _trying = false;
        Phase = next;
        _phaseMs = 0;
    }

    private int PhaseDeadlineMs()
    {
        switch (Phase)
        {
            case Phase.Dose:
                return _dose.DeadlineMs();
            case Phase.RetryPause:
                return Saturating.Remaining(_settings[SettingField.RetryPauseMs], _phaseMs);
            case Phase.Prime:
                return Saturating.Remaining(_settings[SettingField.PrimeLimitMs], _phaseMs);
            default:
                return RestDeadlineMs();
        }
    }

    private int RestDeadlineMs()
    {
        if (!_dose.Pending)
        {
            // A user's rule is asked in every phase, so that rule-fault does not depend on when it is looked for.
            bool counts = RestCounts && (RestMatters || _settings.RestMode == RestMode.Rule);
            return counts ? _rest.DeadlineMs(Alarms.IsActive(AlarmId.ShaftSignalLost)) : Saturating.Never;
        }

        if (!RestMatters)
            return Saturating.Never;
        return Saturating.Remaining(_settings[Phase == Phase.Failed ? SettingField.NewTryDelayMs : SettingField.RestartDelayMs], _phaseMs);
    }
}
