using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>Faults of the wiring to a supervisory system: wires, contacts, lamps and fuses.</summary>
public static class WiringFaults
{
    private const string AnotherVoltage = "a voltage somewhere in the wiring that the sound part would not leave so";

    private static readonly FaultParameter Touch = new("resistance", "resistance where they touch", "ohm", 1e-3, 1e6, 0.1);
    private static readonly FaultParameter Series = new("resistance", "resistance added", "ohm", 0, 1e9, 10_000) { Harmless = 0 };
    private static readonly WiringPart Wire = new("wire", wiring => wiring.Wires.Select(part => part.Name));
    private static readonly WiringPart WirePair = new("two wires, joined by +", wiring => wiring.Wires.Select(part => part.Name), paired: true);
    private static readonly WiringPart Contact = new("contact", wiring => wiring.Contacts.Select(part => part.Name));
    private static readonly WiringPart Lamp = new("lamp", wiring => wiring.Lamps.Select(part => part.Name));
    private static readonly WiringPart Fuse = new("fuse", wiring => wiring.Fuses.Select(part => part.Name));

    /// <summary>A wire of the wiring is broken at its first end.</summary>
    public static WiringFault WireOpen { get; } = new(Wire, (wiring, part, fault) => wiring.SetWireBroken(part.Index, fault.On))
    {
        Name = "wire-open",
        Place = "the wire",
        Manner = FaultManner.Off,
        Effect = "The wire conducts no more.",
        Noticed = "A wire out of its terminal, or nothing.",
        Needs = AnotherVoltage,
    };

    /// <summary>A wire has a resistance, as a corroded terminal does.</summary>
    public static WiringFault WireResistive { get; } = new(Wire, (wiring, part, fault) => wiring.SetWireOhms(part.Index, fault.Value))
    {
        Name = "wire-resistive",
        Place = "the wire",
        Manner = FaultManner.Wrong,
        Effect = "The wire has a resistance more.",
        Noticed = "A green or brown terminal, warm under load.",
        Needs = AnotherVoltage,
        Parameter = Series,
    };

    /// <summary>A wire touches another.</summary>
    public static WiringFault WireBridged { get; } = new(WirePair, (wiring, part, fault) => wiring.SetWireBridge(part.Index, part.Other, Touching(fault)))
    {
        Name = "wire-bridged",
        Place = "the two wires",
        Manner = FaultManner.Wrong,
        Effect = "Two wires touch.",
        Noticed = "Crushed or chafed cable, or water in a box.",
        Needs = AnotherVoltage,
        Parameter = Touch,
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The wires are parted at once, but a fuse that blew stays blown.",
    };

    /// <summary>A wire touches the supply's plus.</summary>
    public static WiringFault WireShortedToSupply { get; } = new(Wire, (wiring, part, fault) => wiring.SetWireToSupply(part.Index, Touching(fault)))
    {
        Name = "wire-shorted-to-supply",
        Place = "the wire",
        Manner = FaultManner.Wrong,
        Effect = "The wire touches the supply's plus.",
        Noticed = "Crushed or chafed cable, and a lamp that never goes out.",
        Needs = AnotherVoltage,
        Parameter = Touch,
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The wire is parted from the supply at once, but a fuse that blew stays blown.",
    };

    /// <summary>A wire touches ground.</summary>
    public static WiringFault WireShortedToGround { get; } = new(Wire, (wiring, part, fault) => wiring.SetWireToGround(part.Index, Touching(fault)))
    {
        Name = "wire-shorted-to-ground",
        Place = "the wire",
        Manner = FaultManner.Wrong,
        Effect = "The wire touches ground.",
        Noticed = "Crushed or chafed cable, and a blown fuse.",
        Needs = AnotherVoltage,
        Parameter = Touch,
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The wire is parted from ground at once, but a fuse that blew stays blown.",
    };

    /// <summary>A contact of an output stays closed.</summary>
    public static WiringFault ContactWelded { get; } = new(Contact, (wiring, part, fault) => wiring.SetContactWelded(part.Index, fault.On))
    {
        Name = "contact-welded",
        Place = "the output's contact",
        Manner = FaultManner.Stuck,
        Effect = "The contact stays closed and holds the other side of its relay open.",
        Noticed = "A relay that clicks without effect.",
        Needs = AnotherVoltage,
    };

    /// <summary>A closed contact of an output has a resistance.</summary>
    public static WiringFault ContactResistive { get; } = new(Contact, (wiring, part, fault) => wiring.SetContactOhms(part.Index, fault.Value))
    {
        Name = "contact-resistive",
        Place = "the output's contact",
        Manner = FaultManner.Wrong,
        Effect = "The closed contact has a resistance more.",
        Noticed = "A lamp that glows dimly, or nothing.",
        Needs = AnotherVoltage,
        Parameter = Series,
    };

    /// <summary>A lamp has lost its filament.</summary>
    public static WiringFault LampBlown { get; } = new(Lamp, (wiring, part, fault) => wiring.SetLampBlown(part.Index, fault.On))
    {
        Name = "lamp-blown",
        Place = "the lamp",
        Manner = FaultManner.Off,
        Effect = "The lamp conducts no more.",
        Noticed = "A lamp that stays dark.",
        Needs = AnotherVoltage,
    };

    /// <summary>A fuse has blown.</summary>
    public static WiringFault FuseBlown { get; } = new(Fuse, (wiring, part, fault) => wiring.SetFuseBlown(part.Index, fault.On))
    {
        Name = "fuse-blown",
        Place = "the fuse",
        Manner = FaultManner.Off,
        Effect = "The fuse conducts no more.",
        Noticed = "Everything behind it is dead.",
        Needs = AnotherVoltage,
        HealingNote = "A new fuse conducts at once, and blows again if its cause persists.",
    };

    /// <summary>Every fault of a wiring.</summary>
    public static IReadOnlyList<WiringFault> All { get; } =
    [
        WireOpen, WireResistive, WireBridged, WireShortedToSupply, WireShortedToGround,
        ContactWelded, ContactResistive, LampBlown, FuseBlown,
    ];

    internal static IEnumerable<WiringPart> Parts => [Wire, WirePair, Contact, Lamp, Fuse];

    // Ohms at which they touch; those parted touch at none.
    private static double Touching(FaultSetting fault) => fault.On ? fault.Value : double.PositiveInfinity;
}
