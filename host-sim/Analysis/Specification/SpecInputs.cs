using System;

namespace LubeController.Analysis.Specification;

/// <summary>Buttons, of which a fresh press acts.</summary>
[Flags]
public enum Buttons
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Start.</summary>
    Start = 1,

    /// <summary>Acknowledge.</summary>
    Acknowledge = 2,

    /// <summary>Reset.</summary>
    Reset = 4,

    /// <summary>Dose-now.</summary>
    DoseNow = 8,

    /// <summary>Prime, held to run.</summary>
    Prime = 16,

    /// <summary>Output test.</summary>
    OutputTest = 32,
}

/// <summary>
/// What one scan sees. Every level is given in its meaning, polarity applied: true is "on", "low", "empty", "stop". The
/// default is a machine at work with nothing wrong, no button pressed and all cycle switches off.
/// </summary>
public readonly record struct SpecInputs()
{
    /// <summary>Cycle switches that are on, before debounce: bit 0 is switch 0, bit 1 switch 1.</summary>
    public int CycleSwitches { get; init; }

    /// <summary>Cycle switches whose pulse, if one is accepted in this scan, is judged too fast: bits as above.</summary>
    public int TooFastSwitches { get; init; }

    /// <summary>Shaft pulses counted since the scan before, 0 upward.</summary>
    public int ShaftPulses { get; init; }

    /// <summary>Time since the last of them, ms, 0 upward.</summary>
    public int ShaftPulseAgeMs { get; init; }

    /// <summary>Revolutions of the pump since the scan before, 0 upward.</summary>
    public int PumpRevolutions { get; init; }

    /// <summary>Time since the last of them, ms, 0 upward.</summary>
    public int PumpRevolutionAgeMs { get; init; }

    /// <summary>The machine is running, before debounce.</summary>
    public bool MachineRunning { get; init; } = true;

    /// <summary>The reservoir is low, before debounce.</summary>
    public bool LevelLow { get; init; }

    /// <summary>The reservoir is empty, before debounce.</summary>
    public bool LevelEmpty { get; init; }

    /// <summary>The pump's overload contact has tripped, before debounce.</summary>
    public bool PumpOverload { get; init; }

    /// <summary>The pressure switch is on, before debounce.</summary>
    public bool PressureSwitch { get; init; }

    /// <summary>The main loop tells that this scan came too late.</summary>
    public bool ScanLate { get; init; }

    /// <summary>Line pressure, Pa, gauge.</summary>
    public int PressurePa { get; init; }

    /// <summary>Lubricant temperature, thousandths of a degree Celsius.</summary>
    public int TemperatureMilliCelsius { get; init; } = 20_000;

    /// <summary>Supply voltage, mV.</summary>
    public int SupplyMilliVolt { get; init; } = 24_000;

    /// <summary>The operating stop is on, before debounce.</summary>
    public bool Stop { get; init; }

    /// <summary>Buttons that are down, before debounce.</summary>
    public Buttons Pressed { get; init; }

    /// <summary>
    /// Alarms whose condition is witnessed in this scan, as bits of <see cref="AlarmId"/>: for conditions that these rules
    /// leave open. For an alarm with a rule here either one is enough.
    /// </summary>
    public ulong Witnessed { get; init; }

    internal bool Sees(AlarmId alarm) => (Witnessed >> (int)alarm & 1) != 0;
}
