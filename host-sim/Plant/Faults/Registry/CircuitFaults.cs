namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of the wiring to a supervisory system: wires, contacts, lamps and fuses.</summary>
internal static class CircuitFaults
{
    private const string Differs = "a voltage somewhere in the wiring that the sound part would not leave so";

    private static readonly FaultParameter Touch = new("resistance", "resistance where they touch", "ohm", 1e-3, 1e6, 0.1);
    private static readonly FaultParameter Series = new("resistance", "resistance added", "ohm", 0, 1e9, 10_000) { Harmless = 0 };

    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.WireOpen,
            Name = "wire-open",
            Part = FaultPart.Wire,
            Place = "the wire",
            Manner = FaultManner.Off,
            Effect = "The wire conducts no more.",
            Noticed = "A wire out of its terminal, or nothing.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.WireResistive,
            Name = "wire-resistive",
            Part = FaultPart.Wire,
            Place = "the wire",
            Manner = FaultManner.Wrong,
            Effect = "The wire has a resistance more.",
            Noticed = "A green or brown terminal, warm under load.",
            Needs = Differs,
            Parameter = Series,
        },
        new()
        {
            Kind = FaultKind.WireBridged,
            Name = "wire-bridged",
            Part = FaultPart.WirePair,
            Place = "the two wires",
            Manner = FaultManner.Wrong,
            Effect = "Two wires touch.",
            Noticed = "Crushed or chafed cable, or water in a box.",
            Needs = Differs,
            Parameter = Touch,
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The wires are parted at once, but a fuse that blew stays blown.",
        },
        new()
        {
            Kind = FaultKind.WireShortedToSupply,
            Name = "wire-shorted-to-supply",
            Part = FaultPart.Wire,
            Place = "the wire",
            Manner = FaultManner.Wrong,
            Effect = "The wire touches the supply's plus.",
            Noticed = "Crushed or chafed cable, and a lamp that never goes out.",
            Needs = Differs,
            Parameter = Touch,
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The wire is parted from the supply at once, but a fuse that blew stays blown.",
        },
        new()
        {
            Kind = FaultKind.WireShortedToGround,
            Name = "wire-shorted-to-ground",
            Part = FaultPart.Wire,
            Place = "the wire",
            Manner = FaultManner.Wrong,
            Effect = "The wire touches ground.",
            Noticed = "Crushed or chafed cable, and a blown fuse.",
            Needs = Differs,
            Parameter = Touch,
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The wire is parted from ground at once, but a fuse that blew stays blown.",
        },
        new()
        {
            Kind = FaultKind.ContactWelded,
            Name = "contact-welded",
            Part = FaultPart.WiringContact,
            Place = "the output's contact",
            Manner = FaultManner.Stuck,
            Effect = "The contact stays closed and holds the other side of its relay open.",
            Noticed = "A relay that clicks without effect.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.ContactResistive,
            Name = "contact-resistive",
            Part = FaultPart.WiringContact,
            Place = "the output's contact",
            Manner = FaultManner.Wrong,
            Effect = "The closed contact has a resistance more.",
            Noticed = "A lamp that glows dimly, or nothing.",
            Needs = Differs,
            Parameter = Series,
        },
        new()
        {
            Kind = FaultKind.LampBlown,
            Name = "lamp-blown",
            Part = FaultPart.Lamp,
            Place = "the lamp",
            Manner = FaultManner.Off,
            Effect = "The lamp conducts no more.",
            Noticed = "A lamp that stays dark.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.FuseBlown,
            Name = "fuse-blown",
            Part = FaultPart.Fuse,
            Place = "the fuse",
            Manner = FaultManner.Off,
            Effect = "The fuse conducts no more.",
            Noticed = "Everything behind it is dead.",
            Needs = Differs,
            HealingNote = "A new fuse conducts at once, and blows again if its cause persists.",
        },
    ];
}
