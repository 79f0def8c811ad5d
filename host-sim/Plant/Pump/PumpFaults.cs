using LubeController.Plant.Faults;

namespace LubeController.Plant.Pump;

/// <summary>Faults of pump and motor.</summary>
public static class PumpFaults
{
    internal static readonly FaultPart<PumpUnit> Pump = new();

    /// <summary>The pump's suction passes nothing.</summary>
    public static Fault SuctionBlocked { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "suction-blocked",
        Place = "the pump's suction",
        Manner = FaultManner.Blocked,
        Effect = "The pump draws nothing.",
        Noticed = "The pump runs, perhaps louder, and the gauge stays at zero.",
        Needs = "a pump that turns",
        Change = (pump, fault) => pump.SuctionBlocked = fault.On,
        Differs = (pump, _) => pump.ContactCloses,
    };

    /// <summary>The motor does not turn, whatever its contact says.</summary>
    public static Fault Off { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "pump-off",
        Place = "the motor",
        Manner = FaultManner.Off,
        Effect = "The motor does not turn, whatever its contact does.",
        Noticed = "The contactor pulls in, but the pump is silent and the gauge stays at zero.",
        Needs = "a closed motor contact",
        Change = (pump, fault) => pump.MotorDead = fault.On,
        Differs = (pump, _) => pump.ContactCloses,
    };

    /// <summary>The pump delivers a fraction of what it did when new.</summary>
    public static Fault Worn { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "pump-worn",
        Place = "the pump element",
        Manner = FaultManner.Leaking,
        Parameter = new("remaining", "delivery that remains at a stated pressure and reference viscosity", "1", 0, 1, 0.5) { Harmless = 1 },
        Second = new("at-pressure", "pressure at which that remains", "Pa", 1e5, 1e8, 1e7),
        Effect = "Lubricant leaks back past the element while it delivers, in proportion to the pressure, less the thicker the lubricant is.",
        Noticed = "Doses take longer, the more the higher the pressure and the warmer the lubricant; the gauge climbs slowly.",
        Needs = "a pump that delivers against pressure",
        Change = (pump, fault) => pump.Wear(fault.Value, fault.Second),
        Differs = (_, plant) => plant.PumpedStepM3 > 0 && plant.IsPressurised,
    };

    /// <summary>The motor's contact stays closed.</summary>
    public static Fault ContactWelded { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "pump-contact-welded",
        Place = "the motor's contact",
        Manner = FaultManner.Stuck,
        Effect = "The motor's contact stays closed, whatever drives it.",
        Noticed = "The pump runs on when it should stop.",
        Needs = "a time at which the contact should be open",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The contact opens again; what was pumped meanwhile stays where it is.",
        Change = (pump, fault) => pump.ContactWelded = fault.On,
        Differs = (pump, _) => !pump.Contact && pump.Turns,
    };

    /// <summary>The pump turns more slowly than it should.</summary>
    public static Fault Slow { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "pump-slow",
        Place = "the pump's drive",
        Manner = FaultManner.Slow,
        Parameter = new("speed", "fraction of its speed", "1", 0, 1, 0.5) { Harmless = 1 },
        Effect = "The pump turns more slowly than it should.",
        Noticed = "The pump sounds lower, and doses take longer in the same measure.",
        Needs = "a pump that turns",
        Change = (pump, fault) => pump.SpeedFactor = fault.Value,
        Differs = (pump, _) => pump.ContactCloses,
    };

    /// <summary>The pump's cylinder fills only in part.</summary>
    public static Fault FillingPoor { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "filling-poor",
        Place = "the pump's cylinder",
        Manner = FaultManner.Slow,
        Parameter = new("filled", "fraction of the stroke that fills", "1", 0, 1, 0.5) { Harmless = 1 },
        Effect = "The cylinder fills only in part before each stroke.",
        Noticed = "The gauge rises in small, late kicks, and doses take longer.",
        Needs = "a pump that delivers",
        Change = (pump, fault) => pump.Filling = fault.Value,
        Differs = (pump, _) => pump.ContactCloses,
    };

    /// <summary>The motor's supply is not what it should be.</summary>
    public static Fault MotorSupplyLow { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "motor-supply-low",
        Place = "the motor's supply",
        Manner = FaultManner.Wrong,
        Parameter = new("supply", "fraction of the nominal voltage", "1", 0, 1.2, 0.7) { Harmless = 1 },
        Effect = "The motor is fed with another voltage than its nominal one: its speed falls with it, and the pressure that stalls it.",
        Noticed = "The pump turns slowly; against high pressure it hums and stands still, and starts again when the pressure falls.",
        Needs = "a closed motor contact",
        Change = (pump, fault) => pump.Supply = fault.Value,
        Differs = (pump, _) => pump.ContactCloses,
    };

    /// <summary>The pump is seized and its motor stands under power.</summary>
    public static Fault Seized { get; } = new PlantFault<PumpUnit>(Pump)
    {
        Name = "pump-seized",
        Place = "the pump",
        Manner = FaultManner.Stuck,
        Effect = "The pump cannot be turned: its motor stands under power and warms its overload relay, where there is one.",
        Noticed = "The motor hums and grows hot, the gauge stays at zero; an overload relay trips after a while.",
        Needs = "a closed motor contact",
        Change = (pump, fault) => pump.Seized = fault.On,
        Differs = (pump, _) => pump.ContactCloses,
    };
}
