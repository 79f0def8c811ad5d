using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Wiring;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Formats;

public sealed class WiringReaderTests
{
    private const string Sample = """
        based-on: salt.plant.yaml
        wiring:
          supplies:
            - { name: G1, plus: 24V, minus: 0V, voltage: 24 V, resistance: 200 mohm }
          fuses:
            - { name: F1, from: 24V, to: L+, rating: 500 mA }
          wires:
            - { name: W1, from: X1:2, to: A1, resistance: 2 ohm }
            - { name: W2, from: X1:4, to: A2 }
          contacts:
            - { name: K1, output: healthy-relay, side: normally-open, from: L+, to: X1:2 }
            - { name: K2, output: warning, side: normally-closed, from: L+, to: K9 }
          lamps:
            - { name: P1, from: A1, to: 0V, voltage: 24 V, power: 2 W }
          coils:
            - { name: K10, from: K9, to: 0V, resistance: 1.1 kohm, pull-in: 16 V, drop-out: 2 V }
          coil-contacts:
            - { name: K10-1, coil: K10, side: normally-open, from: L+, to: X1:4 }
          resistors:
            - { name: R1, from: A2, to: 0V, resistance: 2.2 kohm }
          inputs:
            - { name: healthy, from: A1, to: 0V, type: 1, undefined: seeded }
            - name: warning
              from: A2
              to: 0V
              supervision:
                feed: 10 V
                resistance: 1.5 kohm
                elsewhere: broken
                windows:
                  - { state: fine, low: 3 V, high: 4 V }
                  - { state: bad, low: 5000 mV, high: 6 V }
        """;

    private static readonly string Right = Sample.Replace("200 mohm", "0.2 ohm");

    [Fact]
    public void Every_field_reaches_the_description_in_si()
    {
        SupervisoryWiringDescription wiring = Read(Right, out ProblemList problems)!;
        Assert.Empty(problems.All);
        Assert.Equal([new WiringSupply("G1", "24V", "0V", 24, 0.2)], wiring.Supplies);
        Assert.Equal([new WiringFuse("F1", "24V", "L+", 0.5)], wiring.Fuses);
        Assert.Equal([new WiringWire("W1", "X1:2", "A1", 2), new WiringWire("W2", "X1:4", "A2", 0.5)], wiring.Wires);
        Assert.Equal(new WiringContact("K2", "warning", ContactSide.NormallyClosed, "L+", "K9"), wiring.Contacts[1]);
        Assert.Equal([new WiringLamp("P1", "A1", "0V", 24, 2)], wiring.Lamps);
        Assert.Equal([new WiringCoil("K10", "K9", "0V", 1100, 16, 2)], wiring.Coils);
        Assert.Equal([new WiringCoilContact("K10-1", "K10", ContactSide.NormallyOpen, "L+", "X1:4")], wiring.CoilContacts);
        Assert.Equal([new WiringResistor("R1", "A2", "0V", 2200)], wiring.Resistors);
        Assert.Equal((InputType.Type1, UndefinedPolicy.Seeded), (wiring.Inputs[0].Type, wiring.Inputs[0].Undefined));
        LineSupervision line = wiring.Inputs[1].Supervision!;
        Assert.Equal((10.0, 1500.0, "broken"), (line.FeedV, line.Ohms, line.Elsewhere));
        Assert.Equal([new VoltageWindow("fine", 3, 4), new VoltageWindow("bad", 5, 6)], line.Windows);
    }

    [Theory]
    [InlineData("0.2 ohm", "200 mohm", "wiring.supplies[0].resistance", "the unit 'mohm' is unknown")]
    [InlineData("rating: 500 mA", "rating: 500 mV", "wiring.fuses[0].rating", "'mV' makes it a voltage, but a current is expected")]
    [InlineData("output: warning", "output: siren", "wiring.contacts[1].output", "the word is not one of 4 known ones")]
    [InlineData("side: normally-closed, ", "", "wiring.contacts[1].side", "a contact needs the field 'side'")]
    [InlineData("to: A2 }", "to: A3 }", "wiring.wires[1].to", "the wiring cannot be so")]
    [InlineData("drop-out: 2 V", "drop-out: 20 V", "wiring.coils[0].drop-out", "the wiring cannot be so")]
    [InlineData("low: 5000 mV", "low: 3500 mV", "wiring.inputs[1].supervision.windows", "the wiring cannot be so")]
    [InlineData("name: R1", "name: W1", "wiring.resistors[0].name", "the wiring cannot be so")]
    [InlineData("from: X1:2, to: A1", "from: 'X 1', to: A1", "wiring.wires[0].from", "a terminal has letters, digits and - + . : /, at most 20")]
    [InlineData("type: 1,", "type: 4,", "wiring.inputs[0].type", "the word is not one of 3 known ones")]
    [InlineData("power: 2 W", "power: 2 W, colour: red", "wiring.lamps[0].colour", "a lamp has no field 'colour'")]
    public void What_is_wrong_is_told_by_field(string from, string to, string field, string message)
    {
        Assert.Contains(from, Right, System.StringComparison.Ordinal);
        Assert.Null(Read(Right.Replace(from, to), out ProblemList problems));
        Problem first = problems.All[0];
        Assert.Equal(field, first.Field);
        Assert.StartsWith(message, first.Message, System.StringComparison.Ordinal);
    }

    [Fact]
    public void An_input_that_supervises_its_line_has_no_type()
    {
        Assert.Null(Read(Right.Replace("      supervision:", "      type: 2\n      supervision:"), out ProblemList problems));
        Assert.Equal("an input that supervises its line has no 'type'", Assert.Single(problems.All).Message);
    }

    [Fact]
    public void A_plant_without_wiring_has_none()
    {
        using var folder = new TempFolder();
        Assert.Null(PlantReader.Read(folder.At("salt.plant.yaml"), new ProblemList())!.Plant.Wiring);
    }

    private static SupervisoryWiringDescription? Read(string text, out ProblemList problems)
    {
        using var folder = new TempFolder();
        problems = new ProblemList();
        return PlantReader.Read(folder.Write("wired.plant.yaml", text), problems)?.Plant.Wiring;
    }
}
