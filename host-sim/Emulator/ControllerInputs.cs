using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Core;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>The inputs of the controller. What samples, sets, varies or records inputs follows this table, in its order.</summary>
public static class ControllerInputs
{
    private const double ZeroCelsiusK = 273.15;

    /// <summary>Cycle switches, the first one first.</summary>
    public static IReadOnlyList<ControllerInput> CycleSwitches { get; } = [.. Enumerable.Range(0, Inputs.MaxCycleSwitches).Select(CycleSwitch)];

    /// <summary>Machine running.</summary>
    public static ControllerInput MachineRunning { get; } = Operated("machine-running", inputs => inputs.MachineRunning, (inputs, on) => inputs.MachineRunning = on, atRest: true);

    /// <summary>Low-level switch.</summary>
    public static ControllerInput LevelLow { get; } = Switch(
        "level-low", inputs => inputs.LevelLow, (inputs, on) => inputs.LevelLow = on, plant => plant.LevelLow, settings => settings.Is(SettingField.LevelLowFitted));

    /// <summary>Empty switch.</summary>
    public static ControllerInput LevelEmpty { get; } = Switch(
        "level-empty", inputs => inputs.LevelEmpty, (inputs, on) => inputs.LevelEmpty = on, plant => plant.LevelEmpty, settings => settings.Is(SettingField.LevelEmptyFitted));

    /// <summary>Pressure switch.</summary>
    public static ControllerInput PressureSwitch { get; } = Switch(
        "pressure-switch", inputs => inputs.PressureSwitch, (inputs, on) => inputs.PressureSwitch = on, plant => plant.PressureSwitchOn, settings => settings.PressureSwitchUse != PressureSwitchUse.Nothing);

    /// <summary>Operating stop; on is stop.</summary>
    public static ControllerInput Stop { get; } = Operated("stop", inputs => inputs.Stop, (inputs, on) => inputs.Stop = on);

    /// <summary>Buttons, in the order of <see cref="Button"/>.</summary>
    public static IReadOnlyList<ControllerInput> Buttons { get; } = [.. Enum.GetValues<Button>().Select(ButtonInput)];

    /// <summary>Overload contact of the pump's motor.</summary>
    public static ControllerInput PumpOverload { get; } = Switch(
        "pump-overload", inputs => inputs.PumpOverload, (inputs, on) => inputs.PumpOverload = on, plant => plant.OverloadTripped, settings => settings.Is(SettingField.OverloadFitted));

    /// <summary>Line pressure, millibar.</summary>
    public static ControllerInput Pressure { get; } = new()
    {
        Name = "pressure",
        Kind = InputKind.Quantity,
        Unit = "mbar",
        SiUnit = "Pa",
        Least = -1_000_000,
        Most = 1_000_000,
        Get = inputs => inputs.PressureMbar,
        Set = (inputs, value) => inputs.PressureMbar = value,
        Sensor = plant => plant.Description.Transmitter is not null ? Millibar(plant.TransmitterPressurePa) : 0,
        IsHeeded = settings => settings.Is(SettingField.PressureTransmitterFitted),
    };

    /// <summary>Supply voltage, millivolts.</summary>
    public static ControllerInput Supply { get; } = new()
    {
        Name = "supply",
        Kind = InputKind.Quantity,
        Unit = "mV",
        SiUnit = "V",
        Most = 60_000,
        Get = inputs => inputs.SupplyMv,
        Set = (inputs, value) => inputs.SupplyMv = value,
        Sensor = plant => (int)Math.Floor(plant.ControlBaseVoltageV * 1000.0),
        IsHeeded = settings => settings.Is(SettingField.SupplyMeasured),
    };

    /// <summary>Lubricant temperature, tenths of a degree Celsius.</summary>
    public static ControllerInput Temperature { get; } = new()
    {
        Name = "temperature",
        Kind = InputKind.Quantity,
        Unit = "degC",
        SiUnit = "K",
        PerUnit = 10,
        Least = -2_000,
        Most = 5_000,
        Get = inputs => inputs.TemperatureDeciC,
        Set = (inputs, value) => inputs.TemperatureDeciC = value,
        Sensor = plant => (int)Math.Round((plant.TemperatureK - ZeroCelsiusK) * 10.0, MidpointRounding.AwayFromZero),
        IsHeeded = settings => settings.Is(SettingField.ColdJudged),
    };

    /// <summary>Shaft pulses since the last scan; the board counts them from its queue of pin events.</summary>
    public static ControllerInput ShaftPulses { get; } = Count("shaft-pulses", inputs => inputs.ShaftPulses, (inputs, count) => inputs.ShaftPulses = count, SettingField.ShaftFitted);

    /// <summary>Revolutions of the pump since the last scan, counted by the board.</summary>
    public static ControllerInput PumpRevolutions { get; } = Count("pump-revolutions", inputs => inputs.PumpRevolutions, (inputs, count) => inputs.PumpRevolutions = count, SettingField.PumpRevolutionsFitted);

    /// <summary>Whether the scan comes later than allowed, by the board's clock. The main loop sets it after the sensors are read, so it is not recorded with them.</summary>
    public static ControllerInput ScanLate { get; } = new()
    {
        Name = "scan-late",
        Kind = InputKind.Level,
        Get = inputs => inputs.ScanLate ? 1 : 0,
        Set = (inputs, value) => inputs.ScanLate = value != 0,
    };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ControllerInput> All { get; } = Numbered(
    [
        .. CycleSwitches, MachineRunning, LevelLow, LevelEmpty, PressureSwitch, Stop, .. Buttons, PumpOverload,
        Pressure, Supply, Temperature, ShaftPulses, PumpRevolutions, ScanLate,
    ]);

    /// <summary>Those that a script sets and an exploration varies: all but the buttons, which are pressed.</summary>
    public static IReadOnlyList<ControllerInput> Settable { get; } = [.. All.Where(input => input.Button == null)];

    /// <summary>The input of a button.</summary>
    public static ControllerInput Of(Button button) => Buttons[(int)button];

    /// <summary>What the controller is shown of a pressure.</summary>
    internal static int Millibar(double pressurePa) => (int)Math.Floor(pressurePa / 100.0);

    private static ControllerInput CycleSwitch(int index) => new()
    {
        Name = "cycle-switch-" + (index + 1).ToString(CultureInfo.InvariantCulture),
        Kind = InputKind.Level,
        Get = inputs => inputs.CycleSwitch(index) ? 1 : 0,
        Set = (inputs, value) => inputs.SetCycleSwitch(index, value != 0),
        Sensor = plant => index < plant.CycleSwitchCount && plant.CycleSwitchOn(index) ? 1 : 0,
        IsHeeded = settings => index < settings[SettingField.SwitchCount],
    };

    private static ControllerInput Switch(string name, Func<Inputs, bool> get, Action<Inputs, bool> set, Func<LubricationSystem, bool> sensor, Func<Settings, bool> isHeeded) => new()
    {
        Name = name,
        Kind = InputKind.Level,
        Get = inputs => get(inputs) ? 1 : 0,
        Set = (inputs, value) => set(inputs, value != 0),
        Sensor = plant => sensor(plant) ? 1 : 0,
        IsHeeded = isHeeded,
        IsRecorded = true,
    };

    private static ControllerInput Operated(string name, Func<Inputs, bool> get, Action<Inputs, bool> set, bool atRest = false, Button? button = null) => new()
    {
        Name = name,
        Kind = InputKind.Level,
        Get = inputs => get(inputs) ? 1 : 0,
        Set = (inputs, value) => set(inputs, value != 0),
        AtRest = atRest ? 1 : 0,
        IsOperated = true,
        IsRecorded = true,
        Button = button,
    };

    private static ControllerInput ButtonInput(Button button) =>
        Operated(CoreWords.Buttons[button], inputs => inputs.IsDown(button), (inputs, down) => inputs.SetDown(button, down), button: button);

    private static ControllerInput Count(string name, Func<Inputs, int> get, Action<Inputs, int> set, int fitted) => new()
    {
        Name = name,
        Kind = InputKind.Count,
        Unit = "1",
        SiUnit = "1",
        Most = 1_000_000,
        Get = get,
        Set = set,
        IsHeeded = settings => settings.Is(fitted),
    };

    private static ControllerInput[] Numbered(ControllerInput[] inputs)
    {
        for (int row = 0; row < inputs.Length; row++)
            inputs[row].Row = row;
        return inputs;
    }
}
