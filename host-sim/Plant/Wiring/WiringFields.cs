using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Circuits;
using LubeController.Plant.Contacts;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Wiring;

/// <summary>The fields of the wiring and its parts.</summary>
public static class WiringFields
{
    private const int Most = 200;

    internal const string SideRemedy = "write 'normally-open', closed while its relay is energised, or 'normally-closed'";

    private static readonly IReadOnlyList<Choice<ContactSide>> Sides = [new("normally-open", ContactSide.NormallyOpen), new("normally-closed", ContactSide.NormallyClosed)];

    private static readonly IReadOnlyList<Choice<string>> Outputs = [.. WiringOutputs.All.Select(output => new Choice<string>(output, output))];

    private static readonly NumberField<WiringCoil> DropOut = new("drop-out", "It drops out at this voltage.", Measure.Voltage, "V", 0, 60, c => c.DropOutV, (c, v) => c with { DropOutV = v }) { Required = true };

    private static readonly FieldSet<WiringSupply> Supply = new(
        "a supply",
        new WiringSupply("", "", "", double.NaN),
        CircuitFields.Name<WiringSupply>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringSupply>("plus", p => p.Plus, (p, v) => p with { Plus = v }),
        CircuitFields.Terminal<WiringSupply>("minus", p => p.Minus, (p, v) => p with { Minus = v }),
        new NumberField<WiringSupply>("voltage", "", Measure.Voltage, "V", 0.1, 60, p => p.VoltageV, (p, v) => p with { VoltageV = v }) { Required = true },
        CircuitFields.Ohms<WiringSupply>("Resistance inside.", 1e-3, 1e3, p => p.InsideOhms, (p, v) => p with { InsideOhms = v }));

    private static readonly FieldSet<WiringFuse> Fuse = new(
        "a fuse",
        new WiringFuse("", "", "", double.NaN),
        CircuitFields.Name<WiringFuse>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringFuse>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringFuse>("to", p => p.To, (p, v) => p with { To = v }),
        new NumberField<WiringFuse>("rating", "It blows above this current.", Measure.Current, "A", 1e-3, 100, p => p.RatedA, (p, v) => p with { RatedA = v }) { Required = true },
        CircuitFields.Ohms<WiringFuse>("When whole.", 1e-3, 1e3, p => p.Ohms, (p, v) => p with { Ohms = v }));

    private static readonly FieldSet<WiringWire> Wire = new(
        "a wire",
        new WiringWire("", "", ""),
        CircuitFields.Name<WiringWire>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringWire>("from", p => p.From, (p, v) => p with { From = v }, "A broken wire is broken at this end."),
        CircuitFields.Terminal<WiringWire>("to", p => p.To, (p, v) => p with { To = v }),
        CircuitFields.Ohms<WiringWire>("When whole.", 1e-3, 1e3, p => p.Ohms, (p, v) => p with { Ohms = v }));

    private static readonly FieldSet<WiringContact> Contact = new(
        "a contact",
        new WiringContact("", "", ContactSide.NormallyOpen, "", ""),
        CircuitFields.Name<WiringContact>(p => p.Name, (p, v) => p with { Name = v }),
        new ChoiceField<WiringContact, string>("output", "The output that moves it; heartbeat goes to and fro while the main loop completes scans.", Outputs, p => p.Output, (p, v) => p with { Output = v }) { Required = true, TakesOthers = true },
        new ChoiceField<WiringContact, ContactSide>("side", "normally-open is closed while its relay is energised.", Sides, p => p.Side, (p, v) => p with { Side = v }) { Required = true, Remedy = SideRemedy },
        CircuitFields.Terminal<WiringContact>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringContact>("to", p => p.To, (p, v) => p with { To = v }),
        CircuitFields.Ohms<WiringContact>("When closed.", Circuit.LeastOhms, 1e3, p => p.ClosedOhms, (p, v) => p with { ClosedOhms = v }));

    private static readonly FieldSet<WiringRelay> Relay = new(
        "an output's relay",
        new WiringRelay("", new OutputContactDescription()),
        new ChoiceField<WiringRelay, string>("output", "The output whose contacts it moves. Without a relay of its own they move at once and do not bounce.", Outputs, p => p.Output, (p, v) => p with { Output = v }) { Required = true, TakesOthers = true },
        new MicrosecondsField<WiringRelay>("operate", "From coil current to the contact.", "s", 0, 1, p => p.Contact.OperateUs, (p, v) => p with { Contact = p.Contact with { OperateUs = v } }),
        new MicrosecondsField<WiringRelay>("release", "From the end of coil current to the contact.", "s", 0, 1, p => p.Contact.ReleaseUs, (p, v) => p with { Contact = p.Contact with { ReleaseUs = v } }),
        new ChoiceField<WiringRelay, BounceDescription>("bounce", "Of the side that closes.", ContactWords.Bounces, p => p.Contact.Bounce, (p, v) => p with { Contact = p.Contact with { Bounce = v } }) { TakesOthers = true });

    private static readonly FieldSet<WiringLamp> Lamp = new(
        "a lamp",
        new WiringLamp("", "", "", double.NaN, double.NaN),
        CircuitFields.Name<WiringLamp>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringLamp>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringLamp>("to", p => p.To, (p, v) => p with { To = v }),
        new NumberField<WiringLamp>("voltage", "", Measure.Voltage, "V", 0.1, 60, p => p.RatedV, (p, v) => p with { RatedV = v }) { Required = true },
        new NumberField<WiringLamp>("power", "", Measure.Power, "W", 1e-3, 100, p => p.RatedW, (p, v) => p with { RatedW = v }) { Required = true });

    private static readonly FieldSet<WiringCoil> Coil = new(
        "a coil",
        new WiringCoil("", "", "", double.NaN, double.NaN, double.NaN),
        CircuitFields.Name<WiringCoil>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringCoil>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringCoil>("to", p => p.To, (p, v) => p with { To = v }),
        CircuitFields.Ohms<WiringCoil>("", 1, 1e6, p => p.Ohms, (p, v) => p with { Ohms = v }, required: true),
        new NumberField<WiringCoil>("pull-in", "It pulls in at this voltage.", Measure.Voltage, "V", 0.1, 60, p => p.PullInV, (p, v) => p with { PullInV = v }) { Required = true },
        DropOut)
    {
        Rules = [new(DropOut, c => c.DropOutV > 0 && c.DropOutV < c.PullInV, c => $"above 0 and below {Findings.Show(c.PullInV)} V, where it pulls in")],
    };

    private static readonly FieldSet<WiringCoilContact> CoilContact = new(
        "a relay's contact",
        new WiringCoilContact("", "", ContactSide.NormallyOpen, "", ""),
        CircuitFields.Name<WiringCoilContact>(p => p.Name, (p, v) => p with { Name = v }),
        new TextField<WiringCoilContact>("coil", "", TextForm.Name, "K10", p => p.Coil, (p, v) => p with { Coil = v }) { Required = true },
        new ChoiceField<WiringCoilContact, ContactSide>("side", "normally-open is closed while its relay is energised.", Sides, p => p.Side, (p, v) => p with { Side = v }) { Required = true, Remedy = SideRemedy },
        CircuitFields.Terminal<WiringCoilContact>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringCoilContact>("to", p => p.To, (p, v) => p with { To = v }),
        CircuitFields.Ohms<WiringCoilContact>("When closed.", Circuit.LeastOhms, 1e3, p => p.ClosedOhms, (p, v) => p with { ClosedOhms = v }));

    private static readonly FieldSet<WiringResistor> Resistor = new(
        "a resistor",
        new WiringResistor("", "", "", double.NaN),
        CircuitFields.Name<WiringResistor>(p => p.Name, (p, v) => p with { Name = v }),
        CircuitFields.Terminal<WiringResistor>("from", p => p.From, (p, v) => p with { From = v }),
        CircuitFields.Terminal<WiringResistor>("to", p => p.To, (p, v) => p with { To = v }),
        CircuitFields.Ohms<WiringResistor>("", 1e-3, 1e9, p => p.Ohms, (p, v) => p with { Ohms = v }, required: true));

    /// <summary>All of them.</summary>
    public static FieldSet<SupervisoryWiringDescription> All { get; } = new(
        "a wiring",
        new SupervisoryWiringDescription { Supplies = [] },
        new ListField<SupervisoryWiringDescription, WiringSupply>("supplies", "The minus of the first is ground; a short to supply is one to its plus.", Supply, w => w.Supplies, (w, v) => w with { Supplies = v }) { Least = 1, Most = Most, Required = true, Remedy = "write for instance '- { name: G1, plus: 24V, minus: 0V, voltage: 24 V }'" },
        new ListField<SupervisoryWiringDescription, WiringFuse>("fuses", "", Fuse, w => w.Fuses, (w, v) => w with { Fuses = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringWire>("wires", "What can break, corrode and touch.", Wire, w => w.Wires, (w, v) => w with { Wires = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringContact>("contacts", "Contacts of outputs.", Contact, w => w.Contacts, (w, v) => w with { Contacts = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringRelay>("relays", "Relays of outputs.", Relay, w => w.Relays, (w, v) => w with { Relays = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringLamp>("lamps", "", Lamp, w => w.Lamps, (w, v) => w with { Lamps = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringCoil>("coils", "Coils of interposing relays.", Coil, w => w.Coils, (w, v) => w with { Coils = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringCoilContact>("coil-contacts", "Contacts of interposing relays.", CoilContact, w => w.CoilContacts, (w, v) => w with { CoilContacts = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, WiringResistor>("resistors", "For instance at the end of a supervised line.", Resistor, w => w.Resistors, (w, v) => w with { Resistors = v }) { Most = Most },
        new ListField<SupervisoryWiringDescription, SupervisoryInputDescription>("inputs", "Inputs of the supervisory system.", SupervisoryInputFields.All, w => w.Inputs, (w, v) => w with { Inputs = v }) { Most = Most, Required = true, Remedy = "write the inputs of the supervisory system, for instance '- { name: healthy, from: A1-1, to: 0V }'" })
    {
        Verdict = "the wiring cannot be so",
        Whole = WiringCheck.Add,
    };
}
