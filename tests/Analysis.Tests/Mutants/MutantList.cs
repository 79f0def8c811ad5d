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
    private const string Conditions = "AlarmConditions.cs";
    private const string Cycle = "ScanCycle.cs";
    private const string Doses = "DoseControl.cs";
    private const string Intake = "PulseIntake.cs";
    private const string Phases = "PhaseMachine.cs";
    private const string Presses = "Presses.cs";
    private const string Reset = "Reset.cs";
    private const string Table = "AlarmTable.cs";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Mutant> All { get; } =
    [
        // One for each alarm.
        new("stall is retried for ever", "divider-stalled", Doses, "Fail(AlarmId.DividerStalled);", "_phases.Enter(Phase.RetryPause);"),
        new("dose limit is not judged", "dose-too-long", Doses, "if (_dose.IsTooLong)", "if (_dose.IsTooLong && _line.Chosen)"),
        new("missing pressure is one scan late", "line-pressure-missing", "PressureWatch.cs", "IsTimed && _missingMs >= ", "IsTimed && _missingMs > "),
        new("overpressure only informs", "line-overpressure", Table, "\"line-overpressure\", Interlock", "\"line-overpressure\", None"),
        new("empty reservoir does not latch", "reservoir-empty", Table, "\"reservoir-empty\", Interlock, Failure, Latches | TakesDelayOn", "\"reservoir-empty\", Interlock, Failure, TakesDelayOn"),
        new("overload is read the wrong way round", "pump-overload", "PumpWatch.cs", "_overload.Known && _overload.Level", "_overload.Known && !_overload.Level"),
        new("refused settings are passed over", "settings-invalid", Conditions, "SettingsInvalid, !SettingsAreValid", "SettingsInvalid, false"),
        new("wrong dose-ending switch lets the dose go on", "cycle-switch-fault", Intake, "            _doses.Fail();", "            _doses.ClearFailure();"),
        new("no pulse is ever idle", "pulse-while-idle", Intake, "bool idle = _driver.IsIdle;", "bool idle = false;"),
        new("fault of the logic is not told", "logic-fault", "Controller.cs", "NoteAtPowerUp(AlarmId.LogicFault)", "BeginBetweenScans()"),
        new("late scan is told once it is over", "scan-overrun", Conditions, "ScanOverrun, _inputs.ScanLate", "ScanOverrun, !_inputs.ScanLate && _sensors.Held.ScanLate"),
        new("stop renews the overdue clock", "lubrication-overdue", Cycle, "        Dose.ForgetPosition();\n        Phases.Enter(Phase.Stopped);", "        Dose.ForgetPosition();\n        _overdue.Renew();\n        Phases.Enter(Phase.Stopped);"),
        new("lost shaft has no fallback", "shaft-signal-lost", "RestClock.cs", "ShaftOver || (shaftLost && FallbackOver)", "ShaftOver"),
        new("rule may ask for any rest", "rule-fault", "RestClock.cs", "_ruleRemainingMs < 0 || _ruleRemainingMs > longest || ", "_ruleRemainingMs < 0 || "),
        new("pulse too fast counts", "pulse-too-fast", Intake, "_alarms.Touch(AlarmId.PulseTooFast);\n            return;", "_alarms.Touch(AlarmId.PulseTooFast);"),
        new("warm counts as cold", "lubricant-cold", Conditions, "LubricantCold, _sensors.Warmth.IsLow", "LubricantCold, !_sensors.Warmth.IsLow"),
        new("low supply only informs", "supply-low", Table, "\"supply-low\", AlarmAction.Holding", "\"supply-low\", None"),
        new("low level is read the wrong way round", "reservoir-low", Conditions, "SettingField.LevelLowFitted, _sensors.LevelLow);", "SettingField.LevelLowFitted, _sensors.LevelLow);\n        if (_settings.Is(SettingField.LevelLowFitted) && _sensors.LevelLow.Known)\n            _alarms.SetCondition(AlarmId.ReservoirLow, !_sensors.LevelLow.Level);"),
        new("corrupt storage is not told", "storage-corrupt", "Controller.cs", "NoteAtPowerUp(AlarmId.StorageCorrupt)", "BeginBetweenScans()"),
        new("restarts are not counted", "restart-unexpected", "RestartCount.cs", "(tooSoon || _restarts > most)", "tooSoon"),
        new("too little volume is passed over", "sensors-disagree", "SensorComparison.cs", "_volumePercent < 100 - tolerance || ", ""),
        new("broken loop reads as no pressure", "pressure-signal-lost", "PressureWatch.cs", "_isLost = pressureMbar < lowest || ", "_isLost = "),
        new("line that stays under pressure is passed over", "line-not-vented", "PressureDose.cs", "VentLimitMs] && !IsRecharged", "VentLimitMs] && IsRecharged"),

        // One for each property.
        new("interlock spares prime", "pump-off-under-interlock", Phases, "_phase == Phase.Rest || _phase == Phase.Prime);", "_phase == Phase.Rest);"),
        new("stop spares a dose", "pump-off-on-stop", Cycle, "if (_inputs.Stop && Phases.Phase != Phase.Stopped)", "if (_inputs.Stop && Phases.Phase != Phase.Stopped && Phases.Phase != Phase.Dose)"),
        new("stall is no failure", "relay-tells-failure", Table, "\"divider-stalled\", DoseEnding, Failure", "\"divider-stalled\", DoseEnding, OutOfSpecification"),
        new("failed is kept without a cause", "failed-has-cause", Phases, "        Enter(Phase.Rest);\n        _afterFailure = true;", "        _afterFailure = true;"),
        new("stopped gives no warning", "outputs-follow", "OutputDriver.cs", "_alarms.OtherStands || phase == Phase.Stopped || ", "_alarms.OtherStands || "),
        new("new dose renews the timeout", "stall-is-alarmed", "CycleSwitches.cs", "_switches[_settings.DoseEndingIndex].Allow(", "_switches[_settings.DoseEndingIndex].Renew("),
        new("power-up begins the rest anew", "dose-comes-round", Cycle, "        _outputs.MakeSafe();\n        Phases.PowerUp();", "        _outputs.MakeSafe();\n        _rest.Begin();\n        Phases.PowerUp();"),
        new("delay of a raised alarm runs only while it waits to end", "cause-is-alarmed", "AlarmDelays.cs", "            if ((waiting & 1) != 0)\n                _sinceMs[index] = ", "            if ((waiting & 1) != 0 && (_conditions & (1 << index)) == 0)\n                _sinceMs[index] = "),
        new("power-up clears latches", "alarm-survives-cut", Cycle, "        _outputs.MakeSafe();\n        Phases.PowerUp();", "        _outputs.MakeSafe();\n        _alarms.ClearLatches();\n        Phases.PowerUp();"),
        new("reset wants an acknowledgement first", "reset-leaves-failed", Reset, "        _alarms.ClearLatches();", "        if (!_alarms.AnyUnseen)\n            _alarms.ClearLatches();"),
        new("start is refused while a failure stands", "start-leaves-stopped", Presses, "IsObeyed(Button.Start, MayLeaveStopped)", "IsObeyed(Button.Start, MayLeaveStopped && !_alarms.PumpStoppingStands)"),
        new("reset starts a dose", "no-start-by-reset", Reset, "        _phases.LeaveFailed();", "        if (_phases.Phase == Phase.Failed && !_alarms.PumpStoppingStands)\n            _phases.Enter(Phase.Dose);"),

        // What else is easily mistaken.
        new("one retry more than set", "divider-stalled", "CycleSwitch.cs", "_retriesUsed < _settings", "_retriesUsed <= _settings"),
        new("timeout runs with the pump off", "divider-stalled", "CycleSwitch.cs", "        if (doseRuns)\n            _timerMs", "        if (elapsedMs > 0)\n            _timerMs"),
        new("first level makes an edge", "pulse-while-idle", "CycleSwitch.cs", "DebounceMs, ready) || !known)", "DebounceMs, ready) || (!known && !ready))"),
        new("button already on at power-up acts", "no-start-by-reset", "Buttons.cs", "_pressed |= _armed & bit;", "_pressed |= bit;"),
        new("run-on pulses are not credited", "dose-comes-round", "DoseProgress.cs", "return _credit = _credit < most ? _credit + 1 : _credit;", "return _credit;"),
        new("failing alarm lets a new try go on", "dose-ends", Doses, "        _alarms.Hold(id);\n        _fails = true;", "        _alarms.Hold(id);"),
        new("power cut loses a pending dose", "dose-comes-round", Cycle, "        _outputs.MakeSafe();\n        Phases.PowerUp();", "        _outputs.MakeSafe();\n        if (Phases.InDose)\n            Dose.End();\n        Phases.PowerUp();"),
        new("power cut goes on with the dose at once", "no-start-by-reset", Phases, "if (InDose)\n            _phase = ", "if (_phase == Phase.RetryPause)\n            _phase = "),
        new("prime has no limit", "outputs-follow", Cycle, "(!_buttons.IsHeld(Button.Prime) || Phases.ElapsedMs >= _settings[SettingField.PrimeLimitMs])", "!_buttons.IsHeld(Button.Prime)"),
        new("stop keeps the divider's position", "outputs-follow", Cycle, "        Dose.ForgetPosition();\n        Phases.Enter(Phase.Stopped);", "        Phases.Enter(Phase.Stopped);"),
        new("completed try clears the latch", "failed-has-cause", Doses, "        if (_phases.IsTry)\n            _alarms.EndShownByDose();", "        if (_phases.IsTry)\n        {\n            _alarms.EndShownByDose();\n            _alarms.ClearLatches();\n        }"),
        new("relay heeds only failures that are shown", "relay-tells-failure", "AlarmList.cs", "if (CategoryOf((AlarmId)index) == AlarmCategory.Failure)\n                _failures", "if (CategoryOf((AlarmId)index) == AlarmCategory.Failure && (hidden & (1 << index)) == 0)\n                _failures"),
        new("latest alarm counts as the first", "outputs-follow", "Annunciation.cs", "if (_firstUp == NoAlarm || _unseen == 0)", "if (_firstUp >= NoAlarm)"),
        new("stall hides lubrication-overdue", "lubrication-overdue", Table, "\"lubrication-overdue\", None, Failure, TakesDelayOn, 0", "\"lubrication-overdue\", None, Failure, TakesDelayOn, DividerStalled"),
        new("one standing sensor holds the overdue clock", "lubrication-overdue", "Sensors.cs", "StandStill => Shaft.SaysStandstill && !Held.MachineRunning", "StandStill => Shaft.SaysStandstill"),
        new("supply dip leaves the switches believed", "supply-low", Conditions, "        if (_alarms.IsActive(AlarmId.SupplyLow))\n            _sensors.Switches.Forget();", ""),
        new("output test begins while a failure stands", "outputs-follow", Presses, "MayLeaveStopped && !_alarms.FailureStands", "MayLeaveStopped"),
        new("delays on and off are mistaken", "cause-is-alarmed", "AlarmDelays.cs", "(_conditions & (1 << index)) != 0 ? SettingField.DelayOn", "(_conditions & (1 << index)) == 0 ? SettingField.DelayOn"),
    ];
}
