using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Tests.Electrics;

/// <summary>Wirings that the tests are run on; invented.</summary>
internal static class WiringSamples
{
    /// <summary>The good contact closed in health, the warning contact open; a lamp beside them.</summary>
    internal static SupervisoryWiringDescription Plain { get; } = new()
    {
        Supplies = [new("G1", "24V", "0V", 24, 0.2)],
        Fuses = [new("F1", "24V", "L+", 2)],
        Wires =
        [
            new("W-feed", "L+", "X1:1"),
            new("W-good", "X1:2", "A1:1"),
            new("W-warning", "X1:3", "A1:2"),
            new("W-lamp", "X1:4", "P1:1"),
            new("W-lamp-return", "P1:2", "0V"),
            new("W-common", "A1:M", "0V"),
        ],
        Contacts =
        [
            new("K1-good", "good", ContactSide.NormallyOpen, "X1:1", "X1:2"),
            new("K2-warning", "warning", ContactSide.NormallyOpen, "X1:1", "X1:3"),
            new("K3-lamp", "lamp", ContactSide.NormallyOpen, "X1:1", "X1:4"),
        ],
        Lamps = [new("P1", "P1:1", "P1:2", 24, 2)],
        Inputs =
        [
            new() { Name = "good", From = "A1:1", To = "A1:M" },
            new() { Name = "warning", From = "A1:2", To = "A1:M", Type = InputType.Type1 },
        ],
    };

    /// <summary>Lines fed by the supervising inputs, with a resistor across and one in series with each contact.</summary>
    internal static SupervisoryWiringDescription EndOfLine { get; } = new()
    {
        Supplies = [new("G1", "24V", "0V", 24, 0.2)],
        Wires =
        [
            new("W-good", "X1:2", "A1:1", 5),
            new("W-good-return", "X1:1", "0V", 5),
            new("W-warning", "X1:4", "A1:2", 5),
            new("W-warning-return", "X1:3", "0V", 5),
        ],
        Contacts =
        [
            new("K1-good", "good", ContactSide.NormallyOpen, "X1:1", "R1:2"),
            new("K2-warning", "warning", ContactSide.NormallyOpen, "X1:3", "R3:2"),
        ],
        Resistors =
        [
            new("R1", "R1:2", "X1:2", 1000), new("R2", "X1:1", "R1:2", 2200),
            new("R3", "R3:2", "X1:4", 1000), new("R4", "X1:3", "R3:2", 2200),
        ],
        Inputs = [Supervised("good", "A1:1", "closed", "open"), Supervised("warning", "A1:2", "closed", "open"), Ballast],
    };

    /// <summary>Interposing relays between the contacts and the inputs, a supply for each side, and a fuse for each.</summary>
    internal static SupervisoryWiringDescription Interposed { get; } = new()
    {
        Supplies = [new("G1", "24V", "0V", 24, 0.2), new("G2", "S+", "S-", 24, 0.5)],
        Fuses = [new("F1", "24V", "L+", 1), new("F2", "S+", "SL", 0.5)],
        Wires =
        [
            new("W-feed", "L+", "X1:1"),
            new("W-coil-good", "X1:2", "K10:A1"),
            new("W-coil-warning", "X1:3", "K11:A1"),
            new("W-coil-return", "K:A2", "0V"),
            new("W-supervisor", "SL", "K10:11"),
            new("W-good", "K10:14", "A1:1"),
            new("W-warning", "K11:12", "A1:2"),
            new("W-supervisor-minus", "A1:M", "S-"),
            new("W-earth", "S-", "0V"),
        ],
        Contacts =
        [
            new("K1-good", "good", ContactSide.NormallyOpen, "X1:1", "X1:2"),
            new("K2-warning", "warning", ContactSide.NormallyOpen, "X1:1", "X1:3"),
        ],
        Coils = [new("K10", "K10:A1", "K:A2", 1100, 16.8, 2.4), new("K11", "K11:A1", "K:A2", 1100, 16.8, 2.4)],
        CoilContacts =
        [
            new("K10-14", "K10", ContactSide.NormallyOpen, "K10:11", "K10:14"),
            new("K11-12", "K11", ContactSide.NormallyClosed, "K10:11", "K11:12"),
        ],
        Inputs =
        [
            new() { Name = "good", From = "A1:1", To = "A1:M", Type = InputType.Type2 },
            new() { Name = "warning", From = "A1:2", To = "A1:M" },
        ],
    };

    internal static IReadOnlyList<SupervisoryWiringDescription> All { get; } = [Plain, EndOfLine, Interposed];

    internal static int Wire(this SupervisoryWiringDescription wiring, string name) =>
        wiring.Wires.Select((wire, index) => (wire.Name, index)).Single(wire => wire.Name == name).index;

    // A second load on the rail, so that its terminal is named twice.
    private static SupervisoryInputDescription Ballast => new() { Name = "rail", From = "24V", To = "0V" };

    private static SupervisoryInputDescription Supervised(string name, string terminal, string closed, string open) => new()
    {
        Name = name,
        From = terminal,
        To = "0V",
        Supervision = new() { FeedV = 10, Ohms = 1500, Windows = [new(closed, 3.5, 4.5), new(open, 6.4, 7.3)] },
    };
}
