using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Wiring;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class SupervisoryWiringTests
{
    [Fact]
    public void In_health_with_a_warning_and_without_power_the_inputs_read_as_wired()
    {
        SupervisoryWiring wiring = Plain();
        Assert.Equal(["good", "warning", "lamp"], wiring.Outputs);
        Assert.Equal("off off", States(wiring));
        wiring.SetOutput(0, true);
        Assert.Equal("on off", States(wiring));
        wiring.SetOutput(1, true);
        Assert.Equal("on on", States(wiring));
        Assert.InRange(wiring.InputV(1), 23, 24);
        Assert.InRange(wiring.InputA(1), 3.8e-3, 4e-3);
    }

    [Fact]
    public void A_broken_wire_of_a_contact_that_is_closed_in_health_shows_and_of_one_that_is_open_does_not()
    {
        SupervisoryWiring wiring = Plain();
        wiring.SetOutput(0, true);
        wiring.SetWireBroken(Wire("W-warning"), true);
        Assert.Equal("on off", States(wiring));
        wiring.SetOutput(1, true);
        Assert.Equal("on off", States(wiring));
        wiring.SetWireBroken(Wire("W-good"), true);
        Assert.Equal("off off", States(wiring));
    }

    [Fact]
    public void Supervised_lines_tell_an_open_and_a_shorted_wire_from_an_open_and_a_closed_contact()
    {
        var wiring = new SupervisoryWiring(WiringSamples.EndOfLine, 1);
        Assert.Equal("open", wiring.StatesOf(0)[wiring.StateOf(0)]);
        wiring.SetOutput(0, true);
        Assert.Equal("closed", wiring.StatesOf(0)[wiring.StateOf(0)]);
        wiring.SetWireBroken(0, true);
        Assert.Equal("fault", wiring.StatesOf(0)[wiring.StateOf(0)]);
        Assert.Equal(10, wiring.InputV(0), 6);
        wiring.SetWireBroken(0, false);
        wiring.SetWireToGround(0, 0.1);
        Assert.Equal("fault", wiring.StatesOf(0)[wiring.StateOf(0)]);
        wiring.SetWireToGround(0, double.PositiveInfinity);
        wiring.SetWireOhms(0, 4700);
        Assert.Equal("fault", wiring.StatesOf(0)[wiring.StateOf(0)]);
        wiring.SetWireOhms(0, 0);
        Assert.Equal("closed", wiring.StatesOf(0)[wiring.StateOf(0)]);
    }

    [Fact]
    public void A_short_behind_a_closed_contact_blows_the_fuse_and_takes_every_input_with_it()
    {
        SupervisoryWiring wiring = Plain();
        wiring.SetOutput(0, true);
        wiring.SetWireToGround(Wire("W-warning"), 0.1);
        Assert.Equal("on off", States(wiring));
        Assert.False(wiring.IsBlown(0));
        wiring.SetOutput(1, true);
        Assert.Equal("off off", States(wiring));
        Assert.True(wiring.IsBlown(0));

        wiring.SetWireToGround(Wire("W-warning"), double.PositiveInfinity);
        Assert.Equal("off off", States(wiring));
        wiring.SetFuseBlown(0, false);
        Assert.Equal("on on", States(wiring));
    }

    [Fact]
    public void Contacts_weld_and_corrode_and_lamps_blow()
    {
        SupervisoryWiring wiring = Plain();
        wiring.SetOutput(0, true);
        wiring.SetOutput(2, true);
        Assert.True(wiring.IsLit(0));
        wiring.SetLampBlown(0, true);
        Assert.False(wiring.IsLit(0));
        wiring.SetLampBlown(0, false);
        wiring.SetContactOhms(2, 5000);
        Assert.False(wiring.IsLit(0));

        wiring.SetContactWelded(0, true);
        wiring.SetOutput(0, false);
        Assert.Equal("on off", States(wiring));
        wiring.SetContactWelded(0, false);
        Assert.Equal("off off", States(wiring));
        wiring.SetOutput(0, true);
        wiring.SetContactOhms(0, 20_000);
        Assert.Equal("off off", States(wiring));
        Assert.False(wiring.IsUndefined(0));
        wiring.SetContactOhms(0, 6_000);
        Assert.True(wiring.IsUndefined(0));
    }

    [Fact]
    public void While_one_side_of_a_changeover_contact_is_welded_the_other_cannot_close()
    {
        SupervisoryWiringDescription plain = WiringSamples.Plain;
        var wiring = new SupervisoryWiring(
            plain with { Contacts = [.. plain.Contacts.Take(1), new("K1-bad", "good", ContactSide.NormallyClosed, "X1:1", "X1:3"), .. plain.Contacts.Skip(2)] }, 1);
        Assert.Equal("off on", States(wiring));
        wiring.SetOutput(0, true);
        Assert.Equal("on off", States(wiring));
        wiring.SetContactWelded(0, true);
        wiring.SetOutput(0, false);
        Assert.Equal("on off", States(wiring));
        wiring.SetContactWelded(0, false);
        wiring.SetContactWelded(1, true);
        wiring.SetOutput(0, true);
        Assert.Equal("off on", States(wiring));
    }

    [Fact]
    public void A_bounce_opens_both_sides()
    {
        SupervisoryWiring wiring = Plain();
        wiring.SetOutputSides(0, normallyOpenClosed: false, normallyClosedClosed: false);
        Assert.Equal("off off", States(wiring));
    }

    [Fact]
    public void An_input_that_follows_a_beating_output_is_changing_until_its_wire_breaks()
    {
        SupervisoryWiring wiring = Plain();
        wiring.SetOutput(0, true);
        wiring.SetOutputBeating(1);
        Assert.Equal("on changing", States(wiring));
        wiring.SetWireBroken(Wire("W-warning"), true);
        Assert.Equal("on off", States(wiring));
        wiring.SetWireBroken(Wire("W-warning"), false);
        wiring.SetContactWelded(1, true);
        Assert.Equal("on on", States(wiring));
        wiring.SetContactWelded(1, false);
        wiring.SetWireToGround(Wire("W-warning"), 0.1);
        Assert.True(wiring.IsBlown(0));
        Assert.Equal("off off", States(wiring));
        wiring.SetOutput(1, false);
        Assert.Equal("off off", States(wiring));
    }

    [Fact]
    public void An_interposing_relay_whose_contact_feeds_its_own_coil_buzzes_and_its_input_is_changing()
    {
        SupervisoryWiringDescription description = WiringSamples.Interposed;
        var wiring = new SupervisoryWiring(description, 1);
        wiring.SetOutput(0, true);
        Assert.Null(wiring.Buzzing);
        Assert.Equal("on on", States(wiring));
        wiring.SetWireBridge(description.Wire("W-warning"), description.Wire("W-coil-warning"), 0.1);
        Assert.Equal("K11", wiring.Buzzing);
        Assert.Equal("on changing", States(wiring));
        wiring.SetWireBridge(description.Wire("W-warning"), description.Wire("W-coil-warning"), double.PositiveInfinity);
        Assert.Equal("on on", States(wiring));
    }

    [Fact]
    public void Reading_allocates_nothing_when_nothing_changed_and_nothing_when_outputs_or_wires_did()
    {
        SupervisoryWiring wiring = Plain();
        Work(wiring);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int step = 0; step < 200; step++)
            Work(wiring);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void A_description_is_refused_by_field_value_and_remedy()
    {
        SupervisoryWiringDescription plain = WiringSamples.Plain;
        SupervisoryWiringDescription wrong = plain with
        {
            Wires = [.. plain.Wires, new("W-good", "X1:2", "nowhere")],
            Fuses = [new("F1", "24V", "L+", -1)],
            Coils = [new("K9", "24V", "0V", 1000, 5, 6)],
            CoilContacts = [new("K8-14", "K8", ContactSide.NormallyOpen, "24V", "0V")],
        };
        string[] found = [.. WiringCheck.Check(wrong).Where(finding => finding.IsRefusal).Select(finding => finding.ToString())];
        Assert.Equal(
            [
                "Wiring.Fuses[0].RatedA = -1: accepted is 0.001 to 100 A",
                "Wiring.Wires[6].Name = 'W-good': accepted is a name that no other has",
                "Wiring.Coils[0].DropOutV = 6: accepted is above 0 and below 5 V, where it pulls in",
                "Wiring.CoilContacts[0].Coil = 'K8': accepted is the name of a coil",
                "Wiring.Wires[6].To = 'nowhere': accepted is a terminal that another part names too",
            ],
            found);
        Assert.Throws<ArgumentException>(() => new SupervisoryWiring(wrong, 1));
        Assert.Empty(WiringCheck.Check(plain));
    }

    [Fact]
    public void Windows_that_overlap_are_refused()
    {
        SupervisoryWiringDescription sample = WiringSamples.EndOfLine;
        SupervisoryInputDescription input = sample.Inputs[0];
        SupervisoryWiringDescription wrong = sample with
        {
            Inputs = [input with { Supervision = input.Supervision! with { Windows = [new("a", 1, 3), new("b", 2, 4)] } }, .. sample.Inputs.Skip(1)],
        };
        PlantFinding finding = Assert.Single(WiringCheck.Check(wrong));
        Assert.Equal("Wiring.Inputs[0].Supervision.Windows = 'b' from 2 V: accepted is from 3 V, where 'a' ends", finding.ToString());
    }

    private static void Work(SupervisoryWiring wiring)
    {
        wiring.Read();
        wiring.SetOutput(0, true);
        wiring.SetWireBroken(1, true);
        wiring.Read();
        wiring.SetWireBroken(1, false);
        wiring.SetOutput(0, false);
        wiring.Read();
    }

    private static SupervisoryWiring Plain() => new(WiringSamples.Plain, 1);

    private static int Wire(string name) => WiringSamples.Plain.Wire(name);

    private static string States(SupervisoryWiring wiring)
    {
        IEnumerable<string> states = Enumerable.Range(0, wiring.Description.Inputs.Count).Select(input => wiring.StatesOf(input)[wiring.StateOf(input)]);
        return string.Join(" ", states);
    }
}
