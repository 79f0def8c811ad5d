using System;
using System.Linq;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Handbook.Tests.Electrics;

/// <summary>Proximity switches, cables and contacts held against their standards. The source stands beside each check.</summary>
public sealed class SwitchTests
{
    /// <summary>
    /// Source: IEC 60947-5-2, drop of a three-wire switch at most 3.5 V, from memory; derived: 20.4 V (24 V less 15 %) less
    /// 3.5 V is 16.9 V, which passes the 15 V of a type 1 input.
    /// </summary>
    [Fact]
    public void The_worst_three_wire_drop_at_the_lowest_supply_still_turns_type_1_on()
    {
        var loop = Loop(new() { DropV = 3.5 }, InputType.Type1, supplyV: 20.4);
        Assert.InRange(loop.InputV, 16.88, 16.9);
        Assert.Equal(InputReading.On, loop.Reading);
    }

    /// <summary>Source: IEC 60947-5-2, drop of a two-wire switch at most 8 V, minimum load 5 mA; from memory. Type 2 is made for it.</summary>
    [Fact]
    public void The_worst_two_wire_drop_turns_type_2_on_with_its_minimum_load_met()
    {
        var loop = Loop(TwoWire, InputType.Type2, supplyV: 20.4);
        Assert.InRange(loop.InputV, 12.38, 12.4);
        Assert.False(loop.BelowMinimumLoad);
        Assert.Equal(InputReading.On, loop.Reading);
    }

    /// <summary>
    /// Source: IEC 60947-5-2, off-state current of a two-wire switch at most 1.5 mA; IEC 61131-2, type 1 transition 0.5 mA.
    /// Derived: 1.5 mA exceeds 0.5 mA, so whether type 1 reads off is a matter of voltage alone: through the 6 kohm of the
    /// assumed curve it is 9 V, undefined, and through 3 kohm in all it would be 4.5 V, off. Type 2 is off by its 2 mA.
    /// </summary>
    [Fact]
    public void The_worst_two_wire_residual_current_is_off_for_type_2_and_a_matter_of_voltage_for_type_1()
    {
        var loop = Loop(TwoWire, InputType.Type1, present: false);
        Assert.Equal(1.5e-3, loop.InputA, 4);
        Assert.Equal(9, loop.InputV, 1);
        Assert.Equal(InputReading.Undefined, loop.Reading);
        Assert.Equal(InputReading.Off, InputRegions.Of(InputType.Type1).Read(4.5, 1.5e-3));
        Assert.Equal(InputReading.Off, Loop(TwoWire, InputType.Type2, present: false).Reading);
    }

    /// <summary>Source: IEC 60947-5-2, off-state current of a three-wire switch at most 0.5 mA, from memory: off for every type.</summary>
    [Theory]
    [InlineData(InputType.Type1)]
    [InlineData(InputType.Type2)]
    [InlineData(InputType.Type3)]
    public void The_worst_three_wire_residual_current_is_off_for_every_type(InputType type) =>
        Assert.Equal(InputReading.Off, Loop(new() { ResidualA = 0.5e-3 }, type, present: false).Reading);

    /// <summary>Source: IEC 60947-5-2, ready delay at most 300 ms, from memory.</summary>
    [Fact]
    public void The_worst_ready_delay_ends_at_300_ms()
    {
        var loop = Loop(new() { ReadyDelayUs = 300_000 }, InputType.Type3);
        loop.AdvanceTo(299_999);
        Assert.False(loop.On);
        loop.AdvanceTo(300_000);
        Assert.True(loop.On);
    }

    /// <summary>Source: IEC 61131-2 and the switch's circuit: an NPN switch connects to minus, and a sinking input needs plus.</summary>
    [Theory]
    [InlineData(InputType.Type1)]
    [InlineData(InputType.Type2)]
    [InlineData(InputType.Type3)]
    public void An_npn_switch_never_turns_a_sinking_input_on(InputType type)
    {
        Assert.Equal(InputReading.Off, Loop(new() { Output = SwitchOutput.Npn }, type, present: true).Reading);
        Assert.Equal(InputReading.Off, Loop(new() { Output = SwitchOutput.Npn }, type, present: false).Reading);
    }

    /// <summary>Source: IEC 60947-5-6: about 8.2 V behind 1 kohm, switching at 1.2 and 2.1 mA; broken at 0.1 mA or less and shorted at 6.5 mA or more as preset.</summary>
    [Theory]
    [InlineData(0.05e-3, NamurReading.Break)]
    [InlineData(0.1e-3, NamurReading.Break)]
    [InlineData(0.11e-3, NamurReading.Low)]
    [InlineData(1.2e-3, NamurReading.Low)]
    [InlineData(1.21e-3, NamurReading.Between)]
    [InlineData(2.09e-3, NamurReading.Between)]
    [InlineData(2.1e-3, NamurReading.High)]
    [InlineData(6.49e-3, NamurReading.High)]
    [InlineData(6.5e-3, NamurReading.Short)]
    public void A_namur_amplifier_switches_and_watches_its_wires_at_the_standard_currents(double currentA, NamurReading reading)
    {
        var amplifier = new NamurAmplifier(new NamurAmplifierDescription());
        amplifier.Read(currentA);
        Assert.Equal(reading, amplifier.Reading);
    }

    /// <summary>Source: IEC 60947-5-6: 8.2 V behind 1 kohm drives 8.2 mA into a short; an inductive switch draws low current with metal present.</summary>
    [Fact]
    public void An_inductive_namur_switch_draws_low_current_with_metal_present_and_a_short_draws_8_2_mA()
    {
        var loop = Loop(new() { Output = SwitchOutput.Namur }, InputType.Type3, present: true);
        Assert.InRange(loop.InputA, 0.1e-3, 1.2e-3);
        loop.SetPresent(false);
        Assert.InRange(loop.InputA, 2.1e-3, 6.5e-3);
        loop.SetCoresShorted(CableCore.Plus, CableCore.Signal, true);
        Assert.Equal(8.2e-3, loop.InputA, 4);
    }

    /// <summary>Source: M12 A-coded, colours of EN 50044: 1 brown plus, 3 blue minus, 4 black output.</summary>
    [Theory]
    [InlineData(CableCore.Plus, 1, "brown")]
    [InlineData(CableCore.Minus, 3, "blue")]
    [InlineData(CableCore.Signal, 4, "black")]
    public void Cores_have_the_pins_and_colours_of_an_M12_connector(CableCore core, int pin, string colour)
    {
        Assert.Equal(pin, CoreColours.PinOf(core));
        Assert.Equal(colour, CoreColours.ColourOf(core));
    }

    /// <summary>Source: M12 A-coded, colours of EN 50044: the pins above, and 2 white second output, which no sensor of the bench has.</summary>
    [Theory]
    [InlineData("1", "brown", "plus")]
    [InlineData("2", "white", "second output")]
    [InlineData("3", "blue", "minus")]
    [InlineData("4", "black", "output")]
    public void An_M12_plug_is_listed_as_it_is_wired(string pin, string colour, string carries) =>
        Assert.Single(PlugPin.All, one => one.Plug.StartsWith("M12, A-coded", System.StringComparison.Ordinal) && (one.Pin, one.Colour, one.Carries) == (pin, colour, carries));

    /// <summary>Source: EN 175301-803, form A: pins 18 mm apart. From memory: 1 and 2 the circuit, 3 the changeover, earth flat.</summary>
    [Fact]
    public void A_form_A_plug_has_its_pins_18_mm_apart_and_a_flat_one_for_earth()
    {
        Assert.Equal(0.018, PlugPin.FormAPitchM);
        PlugPin[] pins = [.. PlugPin.All.Where(one => one.Plug.StartsWith("form A, pins 18 mm apart", System.StringComparison.Ordinal))];
        Assert.Equal(["1", "2", "3", "flat"], pins.Select(one => one.Pin));
        Assert.Equal(["the circuit", "the circuit", "the other side of a changeover contact", "earth"], pins.Select(one => one.Carries));
    }

    /// <summary>Source: Ganssle, A guide to debouncing: contacts bounce 1.6 ms in the mean and 6.2 ms at worst; from memory.</summary>
    [Fact]
    public void A_usual_contact_bounces_1_6_ms_in_the_mean_and_6_2_ms_at_worst()
    {
        (double meanUs, long worstUs) = Bounces(BounceDescription.Usual, 20_000);
        Assert.InRange(meanUs, 1_550, 1_650);
        Assert.InRange(worstUs, 6_000, 6_200);
    }

    /// <summary>Source: a reed settles in under 1 ms.</summary>
    [Fact]
    public void A_reed_settles_within_1_ms()
    {
        (_, long worstUs) = Bounces(BounceDescription.Reed, 20_000);
        Assert.InRange(worstUs, 900, 1_000);
    }

    private static ProximitySwitchDescription TwoWire => new() { Output = SwitchOutput.TwoWire, DropV = 8, ResidualA = 1.5e-3, MinimumLoadA = 5e-3 };

    private static SensorLoop Loop(ProximitySwitchDescription sensor, InputType type, bool present = true, double supplyV = 24) =>
        new(new SensorLoopDescription { Switch = sensor, Input = type, SupplyV = supplyV }, present, 1);

    private static (double MeanUs, long WorstUs) Bounces(BounceDescription bounce, int moves)
    {
        var contact = new OutputContact(new OutputContactDescription { Bounce = bounce }, 1);
        long sum = 0;
        long worst = 0;
        for (int move = 0; move < moves; move++)
        {
            long start = contact.NowUs;
            contact.Command(move % 2 == 0);
            while (contact.NextEventUs != long.MaxValue)
                contact.AdvanceTo(contact.NextEventUs);
            long lasted = contact.NowUs - start;
            sum += lasted;
            worst = Math.Max(worst, lasted);
            contact.AdvanceTo(start + 10_000);
        }

        return ((double)sum / moves, worst);
    }
}
