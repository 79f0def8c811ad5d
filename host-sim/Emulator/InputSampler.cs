using System;
using System.Linq;
using LubeController.Core;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>Fills the input image from the plant's sensors, from counters, and from what is operated or held by hand.</summary>
internal sealed class InputSampler(BenchSetup setup, LubricationSystem plant, BenchControls controls, PinEvents pins)
{
    private static readonly ControllerInput[] Sensed = [.. ControllerInputs.All.Where(input => input.Sensor != null)];

    private readonly Inputs _probe = new();
    private readonly bool _countsRevolutions = setup.Settings.Is(SettingField.PumpRevolutionsFitted);
    private long _revolutionsTaken;
    private int _scannedLevels;
    private int _scannedTemperature;

    /// <summary>The board starts: it has counted nothing yet.</summary>
    public void Begin()
    {
        _revolutionsTaken = plant.PumpRevolutions;
        pins.Begin();
    }

    /// <summary>Takes the inputs of a scan.</summary>
    public void Sample(Inputs inputs)
    {
        // The main loop sets this one after the inputs are read: what is left of the last scan is no input.
        inputs.ScanLate = false;
        Sense(inputs);
        pins.CountShaft(inputs);
        CountRevolutions(inputs);
        _scannedLevels = inputs.Levels;
        _scannedTemperature = inputs.TemperatureDeciC;
    }

    /// <summary>Whether inputs have changed since the last scan so that the core must look at them; the transmitter's pressure aside, unless it is held by hand.</summary>
    public bool HasChanged(Controller core)
    {
        Sense(_probe);
        bool revolved = !controls.IsHeld(ControllerInputs.PumpRevolutions) && _countsRevolutions && plant.PumpRevolutions != _revolutionsTaken;
        return _probe.Levels != _scannedLevels || _probe.TemperatureDeciC != _scannedTemperature || revolved || controls.GivesCounts
            || (controls.IsHeld(ControllerInputs.Pressure) && (_probe.PressureMbar < core.QuietPressureLowMbar || _probe.PressureMbar > core.QuietPressureHighMbar))
            || _probe.SupplyMv < core.QuietSupplyLowMv || _probe.SupplyMv > core.QuietSupplyHighMv;
    }

    private void Sense(Inputs inputs)
    {
        foreach (ControllerInput input in Sensed)
            input.Set(inputs, input.Sensor!(plant));
        controls.CopyTo(inputs);
    }

    private void CountRevolutions(Inputs inputs)
    {
        long revolutions = plant.PumpRevolutions - _revolutionsTaken;
        _revolutionsTaken = plant.PumpRevolutions;
        inputs.PumpRevolutionAgeMs = 0;
        if (controls.IsHeld(ControllerInputs.PumpRevolutions))
            inputs.PumpRevolutions = controls.TakeCount(ControllerInputs.PumpRevolutions);
        else if (_countsRevolutions)
            inputs.PumpRevolutions = (int)Math.Min(revolutions, int.MaxValue);
    }
}
