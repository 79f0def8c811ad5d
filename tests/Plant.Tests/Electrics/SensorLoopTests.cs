using System;
using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class SensorLoopTests
{
    [Fact]
    public void The_default_loop_reads_what_the_switch_senses()
    {
        var loop = new SensorLoop(new SensorLoopDescription(), present: false, 1);
        Assert.False(loop.On);
        loop.SetPresent(true);
        Assert.True(loop.On);
        Assert.InRange(loop.InputV, 23.5, 24);
        Assert.InRange(loop.InputA, 2e-3, 3e-3);
        loop.SetPresent(false);
        Assert.False(loop.On);
        Assert.Equal(long.MaxValue, loop.NextEventUs);
    }

    [Theory]
    [InlineData(CableCore.Plus)]
    [InlineData(CableCore.Minus)]
    [InlineData(CableCore.Signal)]
    public void A_broken_core_of_a_pnp_switch_reads_off(CableCore core)
    {
        var loop = new SensorLoop(new SensorLoopDescription(), present: true, 1);
        loop.SetCoreBroken(core, true);
        Assert.False(loop.On);
        loop.SetCoreBroken(core, false);
        Assert.True(loop.On);
    }

    [Theory]
    [InlineData(SwitchOutput.Pnp, false, CableCore.Signal, CableCore.Plus, true)]
    [InlineData(SwitchOutput.Pnp, true, CableCore.Signal, CableCore.Minus, false)]
    [InlineData(SwitchOutput.Pnp, true, CableCore.Plus, CableCore.Minus, false)]
    [InlineData(SwitchOutput.DryContact, false, CableCore.Signal, CableCore.Plus, true)]
    public void Shorted_cores_read_by_the_circuit(SwitchOutput output, bool present, CableCore core, CableCore other, bool expected)
    {
        var loop = new SensorLoop(With(new() { Output = output }), present, 1);
        Assert.Equal(present, loop.On);
        loop.SetCoresShorted(core, other, true);
        Assert.Equal(expected, loop.On);
        loop.SetCoresShorted(core, other, false);
        Assert.Equal(present, loop.On);
    }

    [Fact]
    public void Cores_that_touch_supply_or_ground_read_by_the_circuit()
    {
        var loop = new SensorLoop(new SensorLoopDescription(), present: false, 1);
        loop.SetCoreToSupply(CableCore.Signal, true);
        Assert.True(loop.On);
        loop.SetCoreToSupply(CableCore.Signal, false);
        loop.SetPresent(true);
        loop.SetCoreToGround(CableCore.Signal, true);
        Assert.False(loop.On);
    }

    /// <summary>With minus and signal swapped the switch's own current goes through the input, which takes it for a target.</summary>
    [Theory]
    [InlineData(CableCore.Plus, CableCore.Minus, false)]
    [InlineData(CableCore.Plus, CableCore.Signal, false)]
    [InlineData(CableCore.Minus, CableCore.Signal, true)]
    public void With_swapped_cores_a_switch_reads_the_same_with_and_without_a_target(CableCore core, CableCore other, bool expected)
    {
        var loop = new SensorLoop(new SensorLoopDescription(), present: true, 1);
        loop.SetCoresSwapped(core, other, true);
        Assert.Equal(expected, loop.On);
        loop.SetPresent(false);
        Assert.Equal(expected, loop.On);
        loop.SetCoresSwapped(core, other, false);
        Assert.False(loop.On);
        loop.SetPresent(true);
        Assert.True(loop.On);
    }

    [Fact]
    public void A_resistive_core_drops_the_voltage_until_the_input_loses_it()
    {
        var loop = new SensorLoop(new SensorLoopDescription(), present: true, 1);
        loop.SetCoreOhms(CableCore.Signal, 3000);
        Assert.Equal(InputReading.On, loop.Reading);
        loop.SetCoreOhms(CableCore.Signal, 6000);
        Assert.Equal(InputReading.Undefined, loop.Reading);
        loop.SetCoreOhms(CableCore.Signal, 50_000);
        Assert.Equal(InputReading.Off, loop.Reading);
    }

    [Fact]
    public void An_npn_switch_needs_a_pull_up_and_reads_inverted()
    {
        var bare = new SensorLoop(With(new() { Output = SwitchOutput.Npn }), present: true, 1);
        Assert.False(bare.On);
        bare.SetPresent(false);
        Assert.False(bare.On);

        var pulledUp = new SensorLoop(With(new() { Output = SwitchOutput.Npn }) with { PullUpOhms = 1000 }, present: true, 1);
        Assert.False(pulledUp.On);
        pulledUp.SetPresent(false);
        Assert.True(pulledUp.On);
    }

    [Fact]
    public void A_three_wire_switch_becomes_ready_late_and_after_each_loss_of_supply()
    {
        var loop = new SensorLoop(With(new() { ReadyDelayUs = 300_000 }), present: true, 1);
        Assert.False(loop.On);
        Assert.Equal(300_000, loop.NextEventUs);
        loop.AdvanceTo(299_999);
        Assert.False(loop.On);
        loop.AdvanceTo(300_000);
        Assert.True(loop.On);

        loop.AdvanceTo(1_000_000);
        loop.SetSupply(9);
        Assert.False(loop.On);
        loop.AdvanceTo(1_001_000);
        loop.SetSupply(24);
        Assert.False(loop.On);
        loop.AdvanceTo(1_301_000);
        Assert.True(loop.On);
    }

    [Fact]
    public void A_two_wire_switch_below_its_minimum_load_has_an_undefined_level()
    {
        ProximitySwitchDescription sensor = new() { Output = SwitchOutput.TwoWire, DropV = 6, ResidualA = 0.8e-3, MinimumLoadA = 5e-3 };
        var weak = new SensorLoop(With(sensor) with { Undefined = UndefinedPolicy.Low }, present: true, 1);
        Assert.True(weak.BelowMinimumLoad);
        Assert.Equal(InputReading.Undefined, weak.Reading);
        Assert.False(weak.On);

        var strong = new SensorLoop(With(sensor) with { Input = InputType.Type2 }, present: true, 1);
        Assert.False(strong.BelowMinimumLoad);
        Assert.True(strong.On);
        Assert.InRange(strong.InputV, 17, 18);
    }

    [Fact]
    public void A_state_shorter_than_half_the_switching_period_is_not_shown()
    {
        var loop = new SensorLoop(With(new() { SwitchingFrequencyHz = 100 }), present: false, 1);
        loop.SetPresent(true);
        loop.AdvanceTo(4_999);
        Assert.False(loop.On);
        loop.SetPresent(false);
        loop.AdvanceTo(20_000);
        Assert.False(loop.On);

        loop.SetPresent(true);
        loop.AdvanceTo(25_000);
        Assert.True(loop.On);
    }

    [Fact]
    public void A_target_too_far_is_not_sensed_and_hysteresis_keeps_one_that_was()
    {
        ProximitySwitchDescription sensor = new() { SensingDistanceM = 2e-3, ReleaseDistanceM = 2.3e-3, TargetDistanceM = 1e-3 };
        var loop = new SensorLoop(With(sensor), present: true, 1);
        loop.SetTargetOffset(1.2e-3);
        Assert.True(loop.On);
        loop.SetTargetOffset(1.4e-3);
        Assert.False(loop.On);
        loop.SetTargetOffset(1.2e-3);
        Assert.False(loop.On);
        loop.SetTargetOffset(0.9e-3);
        Assert.True(loop.On);
    }

    [Theory]
    [InlineData(SensingPrinciple.Inductive, Soiling.MetalChips, true)]
    [InlineData(SensingPrinciple.Inductive, Soiling.Water, false)]
    [InlineData(SensingPrinciple.Capacitive, Soiling.MetalChips, true)]
    [InlineData(SensingPrinciple.Capacitive, Soiling.Water, true)]
    [InlineData(SensingPrinciple.Mechanical, Soiling.MetalChips, false)]
    [InlineData(SensingPrinciple.Magnetic, Soiling.Water, false)]
    public void What_covers_the_face_is_sensed_by_some_principles(SensingPrinciple principle, Soiling soiling, bool sensed)
    {
        var loop = new SensorLoop(With(new() { Principle = principle }), present: false, 1);
        loop.SetSoiling(soiling);
        Assert.Equal(sensed, loop.On);
        loop.SetSoiling(Soiling.Clean);
        Assert.False(loop.On);
    }

    [Fact]
    public void Chips_on_a_magnet_shorten_the_reach_of_a_reed()
    {
        ProximitySwitchDescription reed = new() { Output = SwitchOutput.DryContact, Principle = SensingPrinciple.Magnetic, SensingDistanceM = 4e-3, ReleaseDistanceM = 5e-3, TargetDistanceM = 3e-3 };
        var loop = new SensorLoop(With(reed), present: true, 1);
        Assert.True(loop.On);
        loop.SetSoiling(Soiling.MetalChips);
        Assert.False(loop.On);
    }

    [Fact]
    public void A_namur_switch_is_read_by_current_and_its_wires_are_watched()
    {
        var loop = new SensorLoop(With(new() { Output = SwitchOutput.Namur }), present: false, 1);
        Assert.Equal(NamurReading.High, loop.NamurReading);
        Assert.False(loop.On);
        loop.SetPresent(true);
        Assert.Equal(NamurReading.Low, loop.NamurReading);
        Assert.True(loop.On);

        loop.SetCoreBroken(CableCore.Signal, true);
        Assert.Equal(NamurReading.Break, loop.NamurReading);
        Assert.False(loop.On);
        loop.SetCoreBroken(CableCore.Signal, false);
        loop.SetCoresShorted(CableCore.Plus, CableCore.Signal, true);
        Assert.Equal(NamurReading.Short, loop.NamurReading);
        Assert.Equal(8.2e-3, loop.InputA, 4);
        loop.SetCoresShorted(CableCore.Plus, CableCore.Signal, false);
        loop.SetCoreOhms(CableCore.Plus, 100_000);
        Assert.Equal(NamurReading.Break, loop.NamurReading);
    }

    [Fact]
    public void A_normally_closed_switch_reads_the_other_way()
    {
        var loop = new SensorLoop(With(new() { Contact = SwitchContact.NormallyClosed }), present: false, 1);
        Assert.True(loop.On);
        loop.SetPresent(true);
        Assert.False(loop.On);
    }

    [Fact]
    public void A_dry_contact_bounces_as_its_seed_says_and_settles()
    {
        ProximitySwitchDescription contact = new() { Output = SwitchOutput.DryContact, Principle = SensingPrinciple.Mechanical, Bounce = BounceDescription.Usual };
        List<(long, bool)> first = Edges(contact, 5);
        Assert.Equal(first, Edges(contact, 5));
        Assert.NotEqual(first, Edges(contact, 6));
        Assert.True(first.Count > 2 * 200);
    }

    [Fact]
    public void A_loose_core_makes_and_breaks_as_its_seed_says()
    {
        static List<long> Breaks(ulong seed)
        {
            var loop = new SensorLoop(new SensorLoopDescription(), present: true, seed);
            loop.SetCoreLoose(CableCore.Signal, 50_000, 10_000);
            var times = new List<long>();
            bool last = loop.On;
            while (loop.NextEventUs < 10_000_000)
            {
                loop.AdvanceTo(loop.NextEventUs);
                if (loop.On != last)
                    times.Add(loop.NowUs);
                last = loop.On;
            }

            return times;
        }

        List<long> times = Breaks(3);
        Assert.Equal(times, Breaks(3));
        Assert.NotEqual(times, Breaks(4));
        Assert.InRange(times.Count, 250, 420);
        for (int edge = 1; edge < times.Count; edge++)
            Assert.InRange(times[edge] - times[edge - 1], 5_000, 75_002);
    }

    [Fact]
    public void Evaluating_a_loop_allocates_nothing()
    {
        var loop = new SensorLoop(With(new() { ReadyDelayUs = 1000, SwitchingFrequencyHz = 1000 }), present: false, 1);
        Work(loop, 100);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Work(loop, 2_000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void A_description_out_of_range_is_refused_by_field()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new SensorLoop(With(new() { SensingDistanceM = 3e-3 }), false, 1));
        Assert.Contains("Sensor.Switch.ReleaseDistanceM = 0.0022", refused.Message, StringComparison.Ordinal);
    }

    private static void Work(SensorLoop loop, int times)
    {
        for (int step = 0; step < times; step++)
        {
            loop.AdvanceTo(loop.NowUs + 700);
            loop.SetPresent(step % 2 == 0);
            loop.SetSupply(20 + (step % 5));
            loop.SetCoreOhms(CableCore.Signal, step % 3);
        }
    }

    private static List<(long, bool)> Edges(ProximitySwitchDescription contact, ulong seed)
    {
        var loop = new SensorLoop(With(contact), present: false, seed);
        var edges = new List<(long, bool)>();
        for (int move = 1; move <= 200; move++)
        {
            loop.AdvanceTo(move * 10_000);
            loop.SetPresent(move % 2 == 1);
            edges.Add((loop.NowUs, loop.On));
            while (loop.NextEventUs < (move * 10_000) + 10_000)
            {
                loop.AdvanceTo(loop.NextEventUs);
                edges.Add((loop.NowUs, loop.On));
            }

            Assert.True(loop.NowUs - (move * 10_000) <= BounceDescription.Usual.WorstUs);
            Assert.Equal(move % 2 == 1, loop.On);
        }

        return edges;
    }

    private static SensorLoopDescription With(ProximitySwitchDescription sensor) => new() { Switch = sensor };
}
