using System.Collections.Generic;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>
/// The deliberate faults, chosen before the first run: at least one for each alarm and one for each property. What a person
/// mistakes when writing such logic: a condition the wrong way round, a latch forgotten, a timeout one too long, a timer renewed
/// by what must not renew it, a case left out.
/// </summary>
/// <remarks>
/// After the first run one was exchanged, since it changes nothing that can be seen (run-on pulses credited for a whole dose: a dose ends
/// on a pulse all the same, and one pulse is what it then takes), and one added, with the property dose-ends.
/// </remarks>
internal static class MutantList
{
    private const string Phases = "Controller.Phases.cs";
    private const string Pulses = "Controller.Pulses.cs";
    private const string Table = "AlarmTable.cs";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Mutant> All { get; } =
    [
        // One for each alarm.
        new("stall is retried for ever", "divider-stalled", Phases, "FailDose(AlarmId.DividerStalled);", "Enter(Phase.RetryPause);"),
        new("dose limit is not judged", "dose-too-long", Phases, "if (_dose.IsTooLong)", "if (_dose.IsTooLong && _line.Chosen)"),
        new("missing pressure is one scan late", "line-pressure-missing", "PressureWatch.cs", "Judges && _missingMs >= ", "Judges && _missingMs > "),
        new("overpressure only informs", "line-overpressure", Table, "            case AlarmId.LineOverpressure:\n            case AlarmId.ReservoirEmpty:\n", "            case AlarmId.ReservoirEmpty:\n"),
        new("empty reservoir does not latch", "reservoir-empty", Table, "id != AlarmId.LubricationOverdue && id != AlarmId.ShaftSignalLost && id != AlarmId.ReservoirLow", "id != AlarmId.ReservoirEmpty && id != AlarmId.LubricationOverdue && id != AlarmId.ShaftSignalLost && id != AlarmId.ReservoirLow"),
        new("overload is read the wrong way round", "pump-overload", "PumpWatch.cs", "_overload.Known && _overload.Level", "_overload.Known && !_overload.Level"),
        new("refused settings are passed over", "settings-invalid", Pulses, "SettingsInvalid, !_settingsValid", "SettingsInvalid, false"),
        new("wrong dose-ending switch lets the dose go on", "cycle-switch-fault", Pulses, "            _doseFails = true;", "            _doseFails = false;"),
        new("no pulse is ever idle", "pulse-while-idle", Pulses, "bool idle = _pumpOffMs > _settings[SettingField.RunOnMs];", "bool idle = false;"),
        new("fault of the logic is not told", "logic-fault", "Controller.Person.cs", "NoteAtPowerUp(AlarmId.LogicFault)", "TakeUp()"),
        new("late scan is told once it is over", "scan-overrun", Pulses, "ScanOverrun, _inputs.ScanLate", "ScanOverrun, !_inputs.ScanLate && _held.ScanLate"),
        new("stop renews the overdue clock", "lubrication-overdue", Phases, "        _dose.ForgetPosition();\n        Enter(Phase.Stopped);", "        _dose.ForgetPosition();\n        _overdueMs = 0;\n        Enter(Phase.Stopped);"),
        new("lost shaft has no fallback", "shaft-signal-lost", "RestClock.cs", "ShaftOver || (shaftLost && FallbackOver)", "ShaftOver"),
        new("rule may ask for any rest", "rule-fault", "RestClock.cs", "_ruleRemainingMs < 0 || _ruleRemainingMs > longest || ", "_ruleRemainingMs < 0 || "),
        new("pulse too fast counts", "pulse-too-fast", Pulses, "Alarms.Touch(AlarmId.PulseTooFast);\n            return;", "Alarms.Touch(AlarmId.PulseTooFast);"),
        new("warm counts as cold", "lubricant-cold", Pulses, "LubricantCold, _warmth.IsLow", "LubricantCold, !_warmth.IsLow"),
        new("low supply only informs", "supply-low", Table, "return AlarmAction.Holding;", "return AlarmAction.None;"),
        new("low level is read the wrong way round", "reservoir-low", Pulses, "LevelLowFitted) && _low.Level", "LevelLowFitted) && !_low.Level"),
        new("corrupt storage is not told", "storage-corrupt", "Controller.Person.cs", "NoteAtPowerUp(AlarmId.StorageCorrupt)", "TakeUp()"),
        new("restarts are not counted", "restart-unexpected", "RestartCount.cs", "(tooSoon || _restarts > most)", "tooSoon"),
        new("too little volume is passed over", "sensors-disagree", "SensorComparison.cs", "VolumePercent < 100 - tolerance || ", ""),
        new("broken loop reads as no pressure", "pressure-signal-lost", "PressureWatch.cs", "IsLost = pressureMbar < lowest || ", "IsLost = "),
        new("line that stays under pressure is passed over", "line-not-vented", "PressureDose.cs", "VentLimitMs] && !IsRecharged", "VentLimitMs] && IsRecharged"),

        // One for each property.
        new("interlock spares prime", "pump-off-under-interlock", Phases, "Phase == Phase.Rest || Phase == Phase.Prime)", "Phase == Phase.Rest)"),
        new("stop spares a dose", "pump-off-on-stop", Phases, "if (_inputs.Stop && Phase != Phase.Stopped)", "if (_inputs.Stop && Phase != Phase.Stopped && Phase != Phase.Dose)"),
        new("stall is no failure", "relay-tells-failure", Table, "            case AlarmId.CycleSwitchFault:\n            case AlarmId.ShaftSignalLost:\n", "            case AlarmId.DividerStalled:\n            case AlarmId.CycleSwitchFault:\n            case AlarmId.ShaftSignalLost:\n"),
        new("failed is kept without a cause", "failed-has-cause", Phases, "        Enter(Phase.Rest);\n        _afterFailure = true;", "        _afterFailure = true;"),
        new("stopped gives no warning", "outputs-follow", "Controller.cs", "Alarms.OtherStands || Phase == Phase.Stopped || ", "Alarms.OtherStands || "),
        new("new dose renews the timeout", "stall-is-alarmed", Phases, "_switches[_settings.DoseEndingIndex].Allow(", "_switches[_settings.DoseEndingIndex].Renew("),
        new("power-up begins the rest anew", "dose-comes-round", Phases, "        _trying = false;\n        _phaseMs = 0;\n        _line.Interrupt();", "        _trying = false;\n        _phaseMs = 0;\n        _rest.Begin();\n        _line.Interrupt();"),
        new("delay of a raised alarm runs only while it waits to end", "cause-is-alarmed", "AlarmList.cs", "private bool Waits(int index) => _condition[index] != ", "private bool Waits(int index) => !_condition[index] && _condition[index] != "),
        new("power-up clears latches", "alarm-survives-cut", "Controller.cs", "        _outputs.MakeSafe();\n        PowerUpPhase();", "        _outputs.MakeSafe();\n        Alarms.ClearLatches();\n        PowerUpPhase();"),
        new("reset wants an acknowledgement first", "reset-leaves-failed", Phases, "        Alarms.ClearLatches();", "        if (!Alarms.AnyUnseen)\n            Alarms.ClearLatches();"),
        new("start is refused while a failure stands", "start-leaves-stopped", Phases, "Answer(Button.Start, Phase == Phase.Stopped && !_inputs.Stop)", "Answer(Button.Start, Phase == Phase.Stopped && !_inputs.Stop && !Alarms.PumpStoppingStands)"),
        new("reset starts a dose", "no-start-by-reset", Phases, "_doseFails &= Alarms.DoseEndingStands;\n        if (Phase == Phase.Failed && !Alarms.PumpStoppingStands)\n            EnterRestAfterFailure();", "_doseFails &= Alarms.DoseEndingStands;\n        if (Phase == Phase.Failed && !Alarms.PumpStoppingStands)\n            Enter(Phase.Dose);"),

        // What else is easily mistaken.
        new("one retry more than set", "divider-stalled", "CycleSwitch.cs", "RetriesUsed < _settings", "RetriesUsed <= _settings"),
        new("timeout runs with the pump off", "divider-stalled", "CycleSwitch.cs", "        if (doseRuns)\n            _timerMs", "        if (elapsedMs > 0)\n            _timerMs"),
        new("first level makes an edge", "pulse-while-idle", "CycleSwitch.cs", "DebounceMs, ready) || !known)", "DebounceMs, ready) || (!known && !ready))"),
        new("button already on at power-up acts", "no-start-by-reset", "PressButton.cs", "_input.Level && _armed", "_input.Level"),
        new("run-on pulses are not credited", "dose-comes-round", "DoseProgress.cs", "return _credit = _credit < most ? _credit + 1 : _credit;", "return _credit;"),
        new("failing alarm lets a new try go on", "dose-ends", Phases, "        Alarms.Hold(id);\n        _doseFails = true;", "        Alarms.Hold(id);"),
        new("power cut loses a pending dose", "dose-comes-round", Phases, "            Phase = Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest;\n        if (Phase == Phase.OutputTest)", "        {\n            _dose.End();\n            Phase = Alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest;\n        }\n\n        if (Phase == Phase.OutputTest)"),
        new("power cut goes on with the dose at once", "no-start-by-reset", Phases, "if (Phase == Phase.Dose || Phase == Phase.RetryPause)\n            Phase = ", "if (Phase == Phase.RetryPause)\n            Phase = "),
        new("prime has no limit", "outputs-follow", Phases, "(!_primeButton.Held || _phaseMs >= _settings[SettingField.PrimeLimitMs])", "!_primeButton.Held"),
        new("stop keeps the divider's position", "outputs-follow", Phases, "        _dose.ForgetPosition();\n        Enter(Phase.Stopped);", "        Enter(Phase.Stopped);"),
        new("completed try clears the latch", "failed-has-cause", Phases, "        if (_trying)\n            EndShownByPump();", "        if (_trying)\n        {\n            EndShownByPump();\n            Alarms.ClearLatches();\n        }"),
        new("relay heeds only failures that are shown", "relay-tells-failure", "AlarmList.cs", "if (CategoryOf((AlarmId)index) == AlarmCategory.Failure)\n                Failures", "if (CategoryOf((AlarmId)index) == AlarmCategory.Failure && (Hidden & (1 << index)) == 0)\n                Failures"),
        new("latest alarm counts as the first", "outputs-follow", "AlarmList.Lifecycle.cs", "if (FirstUp == NoAlarm || _unseen == 0)", "if (FirstUp >= NoAlarm)"),
        new("stall hides lubrication-overdue", "lubrication-overdue", Table, "            case AlarmId.DoseTooLong:\n                return Bit(AlarmId.DividerStalled);", "            case AlarmId.LubricationOverdue:\n            case AlarmId.DoseTooLong:\n                return Bit(AlarmId.DividerStalled);"),
        new("one standing sensor holds the overdue clock", "lubrication-overdue", Pulses, "StandsStill => _shaft.SaysStandstill && !_held.MachineRunning", "StandsStill => _shaft.SaysStandstill"),
        new("supply dip leaves the switches believed", "supply-low", Pulses, "        _readyMs = _settings[SettingField.ReadyDelayMs];\n        for (int index = 0; index < _switches.Length; index++)\n            _switches[index].Forget();", "        _readyMs = _settings[SettingField.ReadyDelayMs];"),
        new("output test begins while a failure stands", "outputs-follow", Phases, "Phase == Phase.Stopped && !_inputs.Stop && !Alarms.FailureStands)", "Phase == Phase.Stopped && !_inputs.Stop)"),
        new("delays on and off are mistaken", "cause-is-alarmed", "AlarmList.cs", "_settings[_condition[index] ? SettingField.DelayOn", "_settings[!_condition[index] ? SettingField.DelayOn"),
    ];
}
