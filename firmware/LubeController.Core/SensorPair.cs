namespace LubeController.Core;

/// <summary>Two sensors that can only be right together: the subject of <see cref="ScanEvent.SensorsDisagree"/>.</summary>
public enum SensorPair
{
    /// <summary>The volume pumped and the divider's pulses.</summary>
    VolumeAndPulses = 1,

    /// <summary>The line pressure and the divider's pulses.</summary>
    PressureAndPulses = 2,

    /// <summary>The shaft switch and the machine-running input.</summary>
    ShaftAndMachineRunning = 3,
}
