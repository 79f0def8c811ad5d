using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of the shaft switch.</summary>
public static class ShaftFaults
{
    internal static readonly FaultPart<Shaft> Switch = new();

    /// <summary>The shaft switch gives no pulses.</summary>
    public static Fault SwitchLost { get; } = new PlantFault<Shaft>(Switch)
    {
        Name = "shaft-switch-lost",
        Place = "the shaft switch",
        Manner = FaultManner.Off,
        Effect = "The shaft switch gives no pulses, however the shaft turns.",
        Noticed = "Its lamp does not blink while the shaft turns.",
        Needs = "a pulse that the sound switch would have given",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "Pulses come again; those missed stay missed.",
        Change = (shaft, fault) => shaft.SetLost(fault.NowUs, fault.On),
        Differs = (shaft, plant) => shaft.MissedPulse(plant.TimeUs),
    };
}
