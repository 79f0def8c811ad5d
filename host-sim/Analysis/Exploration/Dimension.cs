using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>One input of the controller with the values it may take. The first is the one with nothing wrong.</summary>
/// <param name="Input">Which.</param>
/// <param name="Values">Its values: 0 off and 1 on for a level, else a number in the unit of the input image. At least one.</param>
public sealed record Dimension(ExploredInput Input, IReadOnlyList<int> Values)
{
    /// <summary>Puts a value into an input image.</summary>
    /// <param name="inputs">The image.</param>
    /// <param name="index">Index of the value.</param>
    public void Apply(Inputs inputs, int index)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        int value = Values[index];
        bool on = value != 0;
        switch (Input)
        {
            case ExploredInput.Switch1 or ExploredInput.Switch2 or ExploredInput.Switch3 or ExploredInput.Switch4:
                inputs.SetCycleSwitch(Input - ExploredInput.Switch1, on);
                break;
            case ExploredInput.MachineRunning: inputs.MachineRunning = on; break;
            case ExploredInput.Stop: inputs.Stop = on; break;
            case ExploredInput.LevelLow: inputs.LevelLow = on; break;
            case ExploredInput.LevelEmpty: inputs.LevelEmpty = on; break;
            case ExploredInput.PressureSwitch: inputs.PressureSwitch = on; break;
            case ExploredInput.PumpOverload: inputs.PumpOverload = on; break;
            case ExploredInput.ScanLate: inputs.ScanLate = on; break;
            case ExploredInput.ShaftPulses: inputs.ShaftPulses = value; break;
            case ExploredInput.PumpRevolutions: inputs.PumpRevolutions = value; break;
            case ExploredInput.PressureMbar: inputs.PressureMbar = value; break;
            case ExploredInput.SupplyMv: inputs.SupplyMv = value; break;
            default: inputs.TemperatureDeciC = value; break;
        }
    }
}

/// <summary>Inputs that an exploration may vary.</summary>
public enum ExploredInput
{
    /// <summary>First cycle switch.</summary>
    Switch1,

    /// <summary>Second cycle switch.</summary>
    Switch2,

    /// <summary>Third cycle switch.</summary>
    Switch3,

    /// <summary>Fourth cycle switch.</summary>
    Switch4,

    /// <summary>Machine running.</summary>
    MachineRunning,

    /// <summary>Operating stop.</summary>
    Stop,

    /// <summary>Low-level switch.</summary>
    LevelLow,

    /// <summary>Empty switch.</summary>
    LevelEmpty,

    /// <summary>Pressure switch.</summary>
    PressureSwitch,

    /// <summary>Overload contact of the pump's motor.</summary>
    PumpOverload,

    /// <summary>The scan comes late.</summary>
    ScanLate,

    /// <summary>Shaft pulses in a step.</summary>
    ShaftPulses,

    /// <summary>Revolutions of the pump in a step.</summary>
    PumpRevolutions,

    /// <summary>Line pressure, millibar.</summary>
    PressureMbar,

    /// <summary>Supply voltage, millivolts.</summary>
    SupplyMv,

    /// <summary>Lubricant temperature, tenths of a degree Celsius.</summary>
    TemperatureDeciC,
}
