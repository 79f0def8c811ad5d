namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of reservoir, pump and motor.</summary>
internal static class PumpFaults
{
    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.SuctionBlocked,
            Name = "suction-blocked",
            Part = FaultPart.None,
            Place = "the pump's suction",
            Manner = FaultManner.Blocked,
            Effect = "The pump draws nothing.",
            Noticed = "The pump runs, perhaps louder, and the gauge stays at zero.",
            Needs = "a pump that turns",
        },
        new()
        {
            Kind = FaultKind.PumpOff,
            Name = "pump-off",
            Part = FaultPart.None,
            Place = "the motor",
            Manner = FaultManner.Off,
            Effect = "The motor does not turn, whatever its contact does.",
            Noticed = "The contactor pulls in, but the pump is silent and the gauge stays at zero.",
            Needs = "a closed motor contact",
        },
        new()
        {
            Kind = FaultKind.PumpWorn,
            Name = "pump-worn",
            Part = FaultPart.None,
            Place = "the pump element",
            Manner = FaultManner.Leaking,
            Parameter = new("remaining", "delivery that remains at a stated pressure and reference viscosity", "1", 0, 1, 0.5) { Harmless = 1 },
            Second = new("at-pressure", "pressure at which that remains", "Pa", 1e5, 1e8, 1e7),
            Effect = "Lubricant leaks back past the element while it delivers, in proportion to the pressure, less the thicker the lubricant is.",
            Noticed = "Doses take longer, the more the higher the pressure and the warmer the lubricant; the gauge climbs slowly.",
            Needs = "a pump that delivers against pressure",
        },
        new()
        {
            Kind = FaultKind.ReservoirEmpty,
            Name = "reservoir-empty",
            Part = FaultPart.None,
            Place = "the reservoir",
            Manner = FaultManner.Wrong,
            Parameter = new("rest", "content that is left", "m3", 0, 10, 0),
            Effect = "The reservoir's content is gone but for a rest.",
            Noticed = "The follower plate or sight glass stands at the bottom.",
            Needs = "a reservoir that holds more than the rest",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The reservoir is filled to its content at the start; what was removed stays removed.",
        },
        new()
        {
            Kind = FaultKind.PumpContactWelded,
            Name = "pump-contact-welded",
            Part = FaultPart.None,
            Place = "the motor's contact",
            Manner = FaultManner.Stuck,
            Effect = "The motor's contact stays closed, whatever drives it.",
            Noticed = "The pump runs on when it should stop.",
            Needs = "a time at which the contact should be open",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The contact opens again; what was pumped meanwhile stays where it is.",
        },
        new()
        {
            Kind = FaultKind.CheckValveLeaking,
            Name = "check-valve-leaking",
            Part = FaultPart.None,
            Place = "the check valve at the pump's outlet",
            Manner = FaultManner.Leaking,
            Parameter = new("leakage", "leakage back to the reservoir at reference viscosity", "m3/s/Pa", 0, 1e-9, 1e-14) { Harmless = 0 },
            Effect = "Lubricant flows back from the line to the reservoir while there is pressure.",
            Noticed = "Pressure falls quickly after the pump stops, with nothing wet outside.",
            Needs = "pressure in the line",
        },
        new()
        {
            Kind = FaultKind.PumpSlow,
            Name = "pump-slow",
            Part = FaultPart.None,
            Place = "the pump's drive",
            Manner = FaultManner.Slow,
            Parameter = new("speed", "fraction of its speed", "1", 0, 1, 0.5) { Harmless = 1 },
            Effect = "The pump turns more slowly than it should.",
            Noticed = "The pump sounds lower, and doses take longer in the same measure.",
            Needs = "a pump that turns",
        },
        new()
        {
            Kind = FaultKind.SuctionAerated,
            Name = "suction-aerated",
            Part = FaultPart.None,
            Place = "the pump's suction",
            Manner = FaultManner.Wrong,
            Parameter = new("share", "air in what is drawn", "1", 0, 1, 0.2) { Harmless = 0 },
            Effect = "The pump draws air together with lubricant.",
            Noticed = "The gauge trembles and climbs slowly, points spit, and strokes go on after the pump stops.",
            Needs = "a pump that delivers",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "No more air is drawn; what is in the line leaves with the lubricant.",
        },
        new()
        {
            Kind = FaultKind.FillingPoor,
            Name = "filling-poor",
            Part = FaultPart.None,
            Place = "the pump's cylinder",
            Manner = FaultManner.Slow,
            Parameter = new("filled", "fraction of the stroke that fills", "1", 0, 1, 0.5) { Harmless = 1 },
            Effect = "The cylinder fills only in part before each stroke.",
            Noticed = "The gauge rises in small, late kicks, and doses take longer.",
            Needs = "a pump that delivers",
        },
        new()
        {
            Kind = FaultKind.MotorSupplyLow,
            Name = "motor-supply-low",
            Part = FaultPart.None,
            Place = "the motor's supply",
            Manner = FaultManner.Wrong,
            Parameter = new("supply", "fraction of the nominal voltage", "1", 0, 1.2, 0.7) { Harmless = 1 },
            Effect = "The motor is fed with another voltage than its nominal one: its speed falls with it, and the pressure that stalls it.",
            Noticed = "The pump turns slowly; against high pressure it hums and stands still, and starts again when the pressure falls.",
            Needs = "a closed motor contact",
        },
        new()
        {
            Kind = FaultKind.LubricantTemperatureOff,
            Name = "lubricant-temperature-off",
            Part = FaultPart.None,
            Place = "the lubricant",
            Manner = FaultManner.Wrong,
            Parameter = new("offset", "temperature added", "K", -80, 80, -20) { Harmless = 0 },
            Effect = "The lubricant is colder or warmer than the temperature that was set.",
            Noticed = "Cold: the gauge climbs high and doses take long; warm: pressure falls fast after the pump stops.",
            Needs = "lubricant that flows, or a temperature that is read",
        },
        new()
        {
            Kind = FaultKind.PumpSeized,
            Name = "pump-seized",
            Part = FaultPart.None,
            Place = "the pump",
            Manner = FaultManner.Stuck,
            Effect = "The pump cannot be turned: its motor stands under power and warms its overload relay, where there is one.",
            Noticed = "The motor hums and grows hot, the gauge stays at zero; an overload relay trips after a while.",
            Needs = "a closed motor contact",
        },
    ];
}
