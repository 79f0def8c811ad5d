using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>What one scan sees, as wired: before debounce and polarity. The default is a machine at work with nothing wrong.</summary>
public readonly record struct LockstepInputs()
{
    /// <summary>Cycle switches that are on: bit 0 is the first.</summary>
    public int CycleSwitches { get; init; }

    /// <summary>Shaft pulses since the scan before, 0 upward.</summary>
    public int ShaftPulses { get; init; }

    /// <summary>Time since the last of them, ms, 0 upward.</summary>
    public int ShaftPulseAgeMs { get; init; }

    /// <summary>Revolutions of the pump since the scan before, 0 upward.</summary>
    public int PumpRevolutions { get; init; }

    /// <summary>Time since the last of them, ms, 0 upward.</summary>
    public int PumpRevolutionAgeMs { get; init; }

    /// <summary>Machine running.</summary>
    public bool MachineRunning { get; init; } = true;

    /// <summary>Low switch of the reservoir.</summary>
    public bool LevelLow { get; init; }

    /// <summary>Empty switch of the reservoir.</summary>
    public bool LevelEmpty { get; init; }

    /// <summary>Pressure switch of the line.</summary>
    public bool PressureSwitch { get; init; }

    /// <summary>Overload contact of the pump's motor.</summary>
    public bool PumpOverload { get; init; }

    /// <summary>Operating stop.</summary>
    public bool Stop { get; init; }

    /// <summary>Buttons that are down.</summary>
    public Buttons Pressed { get; init; }

    /// <summary>Told by the main loop: the scan comes later than allowed.</summary>
    public bool ScanLate { get; init; }

    /// <summary>Supply voltage, mV.</summary>
    public int SupplyMv { get; init; } = 24_000;

    /// <summary>Line pressure from a transmitter, mbar gauge.</summary>
    public int PressureMbar { get; init; }

    /// <summary>Lubricant temperature, tenths of a degree Celsius.</summary>
    public int TemperatureDeciC { get; init; } = 200;
}
