using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// The way to a violation, gone once more: what a script must do at which time, and what the core shows at the end. A letter's
/// inputs are set half a scan period before its scan, power is cut a quarter of one after it. Where a step is longer than a board
/// may take between two scans, more scans lie in it, which change nothing.
/// </summary>
internal sealed class ViolationPath
{
    // In the payload of a boot record.
    private const int FirstBit = 160;
    private const int Bits = 64;

    private readonly CoreSetup _setup;
    private readonly List<string> _steps = [];
    private readonly Inputs _shown = new();
    private Button? _held;
    private string _snapshot = "";
    private int _doses;
    private int _savedStanding;
    private int _silentMs;
    private int _roundMs;
    private long _pressMs = -1;

    // A board that restarts by itself is away for a while, in which the core lives through nothing.
    private long _awayMs;
    private bool _settingsLost;
    private int _flips;

    private ViolationPath(CoreSetup setup)
    {
        _setup = setup;
        PeriodMs = PeriodOf(setup.StepMs);
    }

    /// <summary>Scan period of the script, milliseconds: the step, or the longest even part of it that a script may have.</summary>
    public int PeriodMs { get; }

    /// <summary>Steps of the script, each as the inside of a YAML group.</summary>
    public IReadOnlyList<string> Steps => _steps;

    /// <summary>Time of the scan that shows the violation.</summary>
    public long EndMs { get; private set; }

    /// <summary>Goes the way.</summary>
    /// <param name="setup">The core.</param>
    /// <param name="letters">The letters.</param>
    /// <param name="probed">The property that a probe after them violates, or -1.</param>
    public static ViolationPath Follow(CoreSetup setup, IReadOnlyList<Letter> letters, int probed)
    {
        var path = new ViolationPath(setup);
        path.HoldEverything(letters.Count > 0 ? letters[0].Inputs : setup.Alphabet.Quiet);
        var model = new CoreModel(setup);
        var state = new byte[model.StateLength];
        model.WriteFirst(state);
        for (int index = 0; index < letters.Count; index++)
        {
            path.EndMs = path.TimeOf(index);
            path.Show(letters[index], index);
            int letter = setup.Alphabet.Letters.ToList().IndexOf(letters[index]);
            model.Take(state, letter);
            path.Note(model);
            model.Write(state);
        }

        if (probed >= 0)
            path.Probe(model, (CoreProperty)probed, letters.Count);
        return path;
    }

    /// <summary>What the script demands: names and demands.</summary>
    public IEnumerable<(string Name, string Demand)> Expectations(CoreProperty property)
    {
        switch (property)
        {
            case CoreProperty.StallIsAlarmed:
                yield return ("the silence is alarmed", $"eventually: alarm divider-stalled is on or alarm cycle-switch-fault is on\nfrom: {Since(property)} ms\nwithin: {EndMs - Since(property)} ms");
                break;
            case CoreProperty.DoseComesRound:
                yield return ("another dose is completed", $"eventually: counter doses >= {_doses + 1}\nfrom: {Since(property)} ms\nwithin: {EndMs - Since(property)} ms");
                break;
            case CoreProperty.CauseIsAlarmed:
                yield return ("its alarm is raised", NeverAtTheEnd);
                break;
            case CoreProperty.AlarmSurvivesCut:
                foreach (string alarm in CoreWords.AlarmsOf(_savedStanding))
                    yield return ($"{alarm} stands after the cut", $"eventually: alarm {alarm} is on\nfrom: {EndMs + (PeriodMs / 2)} ms");
                break;
            case CoreProperty.ResetLeavesFailed or CoreProperty.StartLeavesStopped:
                yield return ("the press leads out of the phase", $"eventually: phase is not {(property == CoreProperty.ResetLeavesFailed ? "failed" : "stopped")}\nfrom: {_pressMs} ms");
                break;
            default:
                yield return ("this never comes about", NeverAtTheEnd);
                break;
        }
    }

    private static int PeriodOf(int stepMs)
    {
        int parts = 1;
        while (stepMs / parts > ScriptReader.LongestScanPeriodMs || stepMs % parts != 0)
            parts++;
        return stepMs / parts;
    }

    private string NeverAtTheEnd => $"never: {_snapshot}\nfrom: {EndMs} ms\nto: {EndMs + (PeriodMs / 8)} ms";

    private long Since(CoreProperty property) => Math.Max(0, EndMs - (property == CoreProperty.StallIsAlarmed ? _silentMs : _roundMs));

    private void HoldEverything(Inputs first)
    {
        Settings settings = _setup.Settings;
        for (int index = 0; index < settings[SettingField.SwitchCount]; index++)
            Level(0, $"cycle-switch-{index + 1}", first.CycleSwitch(index));
        if (settings.Is(SettingField.LevelLowFitted))
            Level(0, "level-low", first.LevelLow);
        if (settings.Is(SettingField.LevelEmptyFitted))
            Level(0, "level-empty", first.LevelEmpty);
        if (settings.PressureSwitchUse != PressureSwitchUse.Nothing)
            Level(0, "pressure-switch", first.PressureSwitch);
        if (settings.Is(SettingField.OverloadFitted))
            Level(0, "pump-overload", first.PumpOverload);
        if (settings.Is(SettingField.PressureTransmitterFitted))
            Number(0, "pressure", first.PressureMbar, "mbar");
        if (settings.Is(SettingField.SupplyMeasured))
            Number(0, "supply", first.SupplyMv, "mV");
        if (settings.Is(SettingField.ColdJudged))
            Temperature(0, first.TemperatureDeciC);
        if (settings.Is(SettingField.ShaftFitted))
            Add(0, "set: shaft-pulses, to: 0");
        if (settings.Is(SettingField.PumpRevolutionsFitted))
            Add(0, "set: pump-revolutions, to: 0");
        if (_setup.Alphabet.Has(ExploredInput.ScanLate))
            Level(0, "scan-late", first.ScanLate);
        if (first.Stop)
            Level(0, "stop", true);
        if (!first.MachineRunning)
            Level(0, "machine-running", false);
        _shown.CopyFrom(first);
        _shown.ShaftPulses = 0;
        _shown.PumpRevolutions = 0;
    }

    private void Show(Letter letter, int index)
    {
        long at = Math.Max(0, TimeOf(index) - (PeriodMs / 2));
        Inputs now = letter.Inputs;
        for (int one = 0; one < Inputs.MaxCycleSwitches; one++)
        {
            if (now.CycleSwitch(one) != _shown.CycleSwitch(one))
                Level(at, $"cycle-switch-{one + 1}", now.CycleSwitch(one));
        }

        Changed(at, "machine-running", _shown.MachineRunning, now.MachineRunning);
        Changed(at, "stop", _shown.Stop, now.Stop);
        Changed(at, "level-low", _shown.LevelLow, now.LevelLow);
        Changed(at, "level-empty", _shown.LevelEmpty, now.LevelEmpty);
        Changed(at, "pressure-switch", _shown.PressureSwitch, now.PressureSwitch);
        Changed(at, "scan-late", _shown.ScanLate, now.ScanLate);
        Changed(at, "pump-overload", _shown.PumpOverload, now.PumpOverload);
        if (now.PressureMbar != _shown.PressureMbar)
            Number(at, "pressure", now.PressureMbar, "mbar");
        if (now.SupplyMv != _shown.SupplyMv)
            Number(at, "supply", now.SupplyMv, "mV");
        if (now.TemperatureDeciC != _shown.TemperatureDeciC)
            Temperature(at, now.TemperatureDeciC);
        if (now.ShaftPulses > 0)
            Add(at, string.Create(CultureInfo.InvariantCulture, $"set: shaft-pulses, to: {now.ShaftPulses}"));
        if (now.PumpRevolutions > 0)
            Add(at, string.Create(CultureInfo.InvariantCulture, $"set: pump-revolutions, to: {now.PumpRevolutions}"));
        _shown.CopyFrom(now);
        Hold(at, letter.Button);
        Cut(letter.Cut, index);
    }

    private long TimeOf(int index) => ((long)index * _setup.StepMs) + _awayMs;

    private void Cut(PowerCut cut, int index)
    {
        long quarter = PeriodMs / 4;
        long scan = TimeOf(index);
        switch (cut)
        {
            case PowerCut.None:
                return;
            case PowerCut.CutInSave:
                // The first write after the step's scan is the save that is due.
                Add(Math.Max(0, scan - quarter), "fault: storage-write-torn");
                ComeBack(scan, index);
                return;
            case PowerCut.LoopFault:
                Add(scan + quarter, "fault: loop-throws");
                Add(TimeOf(index + 1) + Math.Min(quarter, Bench.RestartMs / 2), "heal: loop-throws");
                MendSettings(scan + quarter);
                ComeBack(TimeOf(index + 1), index);
                return;
            default:
                Add(scan + quarter, "power: off");
                MendSettings(scan + quarter);
                if (cut == PowerCut.SettingsLost)
                    FlipSettings(scan + quarter);
                if (cut == PowerCut.BlockLost)
                    FlipBootRecord(scan + quarter);
                Add(scan + quarter + (PeriodMs / 8), "power: on");
                return;
        }
    }

    /// <summary>The board is away from a time on; the step after this one comes with its first scan.</summary>
    private void ComeBack(long from, int index)
    {
        long step = _setup.StepMs;
        long first = (from + Bench.RestartMs + step - 1) / step * step;
        _awayMs += first - TimeOf(index + 1);
    }

    private void MendSettings(long at)
    {
        if (_settingsLost)
            FlipSettings(at);
    }

    /// <summary>A bit that is turned round twice stands as it stood.</summary>
    private void FlipSettings(long at)
    {
        _settingsLost = !_settingsLost;
        Add(at, "fault: storage-bit-flip, part: block-0");
        Add(at, "fault: storage-bit-flip, part: block-1");
    }

    /// <summary>Both blocks, since only one may have been written yet; another bit each time, since a block may not have been written since.</summary>
    private void FlipBootRecord(long at)
    {
        string bit = (FirstBit + _flips++ % Bits).ToString(CultureInfo.InvariantCulture);
        Add(at, $"fault: storage-bit-flip, part: block-2, magnitude: {bit}");
        Add(at, $"fault: storage-bit-flip, part: block-3, magnitude: {bit}");
    }

    private void Probe(CoreModel model, CoreProperty property, int letters)
    {
        bool reset = property == CoreProperty.ResetLeavesFailed;
        int quiet = reset ? model.QuietSteps : CoreModel.SettleSteps;
        Show(new Letter(_setup.Alphabet.Quiet, [], null, PowerCut.None), letters);
        int press = letters + quiet;
        _pressMs = TimeOf(press) - (PeriodMs / 2);
        Hold(_pressMs, reset ? Button.Reset : Button.Start);
        EndMs = TimeOf(press + 2);
    }

    private void Note(CoreModel model)
    {
        Controller core = model.Core;
        _doses = core.DosesCompleted;
        _savedStanding = model.SavedStanding;
        _silentMs = model.Monitors.LastedMs(CoreProperty.StallIsAlarmed);
        _roundMs = model.Monitors.LastedMs(CoreProperty.DoseComesRound);
        Outputs outputs = model.Outputs;
        string alarms = string.Concat(CoreWords.AlarmsOf(core.Alarms.Standing).Select(name => $" and alarm {name} is on"));
        _snapshot = $"phase is {CoreWords.Phases[core.Phase]} and output pump is {OnOff(outputs.Pump)} and output healthy-relay is {OnOff(outputs.HealthyRelay)}"
            + $" and output warning is {OnOff(outputs.Warning)} and output lamp is {OnOff(outputs.Lamp)}{alarms}"
            + string.Concat(CoreWords.AlarmsOf(~core.Alarms.Standing).Select(name => $" and alarm {name} is off"));
    }

    private void Hold(long at, Button? button)
    {
        if (button == _held)
            return;
        if (_held is { } before)
            Add(at, $"release: {BenchWords.Of(before)}");
        if (button is { } now)
            Add(at, $"hold: {BenchWords.Of(now)}");
        _held = button;
    }

    private void Changed(long at, string name, bool before, bool now)
    {
        if (before != now)
            Level(at, name, now);
    }

    private void Level(long at, string name, bool on) => Add(at, $"set: {name}, to: {OnOff(on)}");

    private void Number(long at, string name, int value, string unit) => Add(at, string.Create(CultureInfo.InvariantCulture, $"set: {name}, to: {value} {unit}"));

    private void Temperature(long at, int deciC) => Add(at, $"set: temperature, to: {(deciC / 10.0).ToString("R", CultureInfo.InvariantCulture)} degC");

    private void Add(long at, string what) => _steps.Add(string.Create(CultureInfo.InvariantCulture, $"{{ at: {at} ms, {what} }}"));

    private static string OnOff(bool on) => on ? "on" : "off";
}
