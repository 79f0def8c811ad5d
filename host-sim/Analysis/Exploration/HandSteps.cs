using System.Collections.Generic;
using System.Globalization;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Scripts.Steps;

namespace LubeController.Analysis.Exploration;

/// <summary>Script steps that hold a core's inputs by hand: only what changes is written.</summary>
internal sealed class HandSteps
{
    private readonly List<string> _lines = [];
    private readonly Inputs _shown = new();
    private Button? _held;

    /// <summary>The steps, each as the inside of a YAML group.</summary>
    public IReadOnlyList<string> Lines => _lines;

    /// <summary>Adds a step.</summary>
    public void Add(long at, string what) => _lines.Add(string.Create(CultureInfo.InvariantCulture, $"{{ at: {at} ms, {what} }}"));

    /// <summary>Holds everything that is fitted, from the first moment on.</summary>
    public void HoldEverything(CoreSetup setup, Inputs first)
    {
        Settings settings = setup.Settings;
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
        HoldNumbers(settings, first);
        if (setup.Alphabet.Has(ExploredInput.ScanLate))
            Level(0, "scan-late", first.ScanLate);
        if (first.Stop)
            Level(0, "stop", true);
        if (!first.MachineRunning)
            Level(0, "machine-running", false);
        _shown.CopyFrom(first);
        _shown.ShaftPulses = 0;
        _shown.PumpRevolutions = 0;
    }

    /// <summary>Shows the inputs of a letter.</summary>
    public void Show(long at, Inputs now)
    {
        for (int index = 0; index < Inputs.MaxCycleSwitches; index++)
            Changed(at, $"cycle-switch-{index + 1}", _shown.CycleSwitch(index), now.CycleSwitch(index));
        Changed(at, "machine-running", _shown.MachineRunning, now.MachineRunning);
        Changed(at, "stop", _shown.Stop, now.Stop);
        Changed(at, "level-low", _shown.LevelLow, now.LevelLow);
        Changed(at, "level-empty", _shown.LevelEmpty, now.LevelEmpty);
        Changed(at, "pressure-switch", _shown.PressureSwitch, now.PressureSwitch);
        Changed(at, "scan-late", _shown.ScanLate, now.ScanLate);
        Changed(at, "pump-overload", _shown.PumpOverload, now.PumpOverload);
        if (now.PressureMbar != _shown.PressureMbar)
            Number(at, "pressure", now.PressureMbar, " mbar");
        if (now.SupplyMv != _shown.SupplyMv)
            Number(at, "supply", now.SupplyMv, " mV");
        if (now.TemperatureDeciC != _shown.TemperatureDeciC)
            Temperature(at, now.TemperatureDeciC);
        if (now.ShaftPulses > 0)
            Number(at, "shaft-pulses", now.ShaftPulses, "");
        if (now.PumpRevolutions > 0)
            Number(at, "pump-revolutions", now.PumpRevolutions, "");
        _shown.CopyFrom(now);
    }

    /// <summary>Holds a button, or none.</summary>
    public void Hold(long at, Button? button)
    {
        if (button == _held)
            return;
        if (_held is { } before)
            Add(at, $"release: {BenchWords.Of(before)}");
        if (button is { } now)
            Add(at, $"hold: {BenchWords.Of(now)}");
        _held = button;
    }

    /// <summary>A level's word.</summary>
    public static string OnOff(bool on) => on ? "on" : "off";

    private void HoldNumbers(Settings settings, Inputs first)
    {
        if (settings.Is(SettingField.PressureTransmitterFitted))
            Number(0, "pressure", first.PressureMbar, " mbar");
        if (settings.Is(SettingField.SupplyMeasured))
            Number(0, "supply", first.SupplyMv, " mV");
        if (settings.Is(SettingField.ColdJudged))
            Temperature(0, first.TemperatureDeciC);
        if (settings.Is(SettingField.ShaftFitted))
            Number(0, "shaft-pulses", 0, "");
        if (settings.Is(SettingField.PumpRevolutionsFitted))
            Number(0, "pump-revolutions", 0, "");
    }

    private void Changed(long at, string name, bool before, bool now)
    {
        if (before != now)
            Level(at, name, now);
    }

    private void Level(long at, string name, bool on) => Add(at, $"set: {name}, to: {OnOff(on)}");

    private void Number(long at, string name, int value, string unit) => Add(at, string.Create(CultureInfo.InvariantCulture, $"set: {name}, to: {value}{unit}"));

    private void Temperature(long at, int deciC) => Add(at, $"set: temperature, to: {(deciC / 10.0).ToString("R", CultureInfo.InvariantCulture)} degC");
}
