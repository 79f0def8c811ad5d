using System;
using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

/// <summary>A cycle switch whose loop is described: switch, cable, supply and input between the piston and the level.</summary>
public sealed class SensedSwitchTests
{
    private const long EndUs = 120_000_000;

    [Theory]
    [InlineData(SwitchContact.NormallyOpen)]
    [InlineData(SwitchContact.NormallyClosed)]
    public void With_an_ideal_loop_every_level_changes_when_it_did_without_one(SwitchContact contact)
    {
        List<(long, bool)> plain = Levels(With(null, contact));
        Assert.True(plain.Count > 20);
        Assert.Equal(plain, Levels(With(new SensorLoopDescription(), contact)));
    }

    [Theory]
    [InlineData("cycle-switch-wire-broken")]
    [InlineData("cycle-switch-stuck-on")]
    [InlineData("cycle-switch-stuck-off")]
    [InlineData("cycle-switch-chattering")]
    [InlineData("cycle-switch-wire-loose")]
    public void Faults_of_the_plain_switch_give_the_same_levels_through_an_ideal_loop(string name)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        void Fault(LubricationSystem system) => system.ApplyFault(kind, "s");
        List<(long, bool)> plain = Levels(With(null), Fault);
        LubricationSystem sensed = With(new SensorLoopDescription()).Running();
        Fault(sensed);
        Assert.Equal(plain, Levels(sensed));
        Assert.True(sensed.TookEffect(kind, "s"));
    }

    [Fact]
    public void A_ready_delay_and_a_switching_frequency_make_levels_late()
    {
        var slow = new SensorLoopDescription { Switch = new() { SwitchingFrequencyHz = 10 } };
        List<(long Us, bool On)> plain = Levels(With(null));
        List<(long Us, bool On)> late = Levels(With(slow));
        Assert.InRange(late.Count, plain.Count - 1, plain.Count);
        for (int edge = 0; edge < late.Count; edge++)
            Assert.Equal((plain[edge].Us + 50_000, plain[edge].On), late[edge]);
    }

    [Fact]
    public void A_reed_bounces_at_every_edge_within_a_millisecond()
    {
        var reed = new SensorLoopDescription { Switch = new() { Output = SwitchOutput.DryContact, Principle = SensingPrinciple.Magnetic, Bounce = BounceDescription.Reed } };
        List<(long Us, bool On)> plain = Levels(With(null));
        List<(long Us, bool On)> bounced = Levels(With(reed));
        Assert.True(bounced.Count > 2 * plain.Count);
        foreach ((long us, bool _) in bounced)
            Assert.Contains(plain, edge => us >= edge.Us && us <= edge.Us + 1_000);
    }

    [Theory]
    [InlineData("sensor-target-far", "s", false)]
    [InlineData("sensor-chips", "s", true)]
    [InlineData("sensor-supply-low", "s", false)]
    [InlineData("sensor-core-broken", "s+brown", false)]
    [InlineData("sensor-core-broken", "s+black", false)]
    [InlineData("sensor-core-resistive", "s+black", false)]
    [InlineData("sensor-core-shorted-to-supply", "s+black", true)]
    [InlineData("sensor-core-shorted-to-ground", "s+black", false)]
    [InlineData("sensor-cores-shorted", "s+brown+black", true)]
    [InlineData("sensor-cores-swapped", "s+blue+black", true)]
    public void Each_fault_of_the_loop_holds_the_level_takes_effect_and_heals(string name, string part, bool level)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        List<(long, bool)> sound = Levels(With(new SensorLoopDescription()));
        LubricationSystem system = With(new SensorLoopDescription()).Running();
        system.AdvanceTo(10_000_000);
        system.ApplyFault(kind, part);
        while (system.NextEventUs < 60_000_000)
        {
            system.AdvanceTo(system.NextEventUs);
            Assert.Equal(level, system.CycleSwitchOn(0));
        }

        Assert.True(system.TookEffect(kind, part));
        system.AdvanceTo(60_000_000);
        system.HealFault(kind, part);
        Assert.Equal(sound.FindAll(edge => edge.Item1 > 60_000_000), Levels(system));
    }

    [Fact]
    public void Water_takes_no_effect_on_an_inductive_switch()
    {
        LubricationSystem system = With(new SensorLoopDescription()).Running();
        system.ApplyFault(SensorLoopFaults.Water, "s");
        system.AdvanceTo(EndUs);
        Assert.False(system.TookEffect(SensorLoopFaults.Water, "s"));
    }

    [Fact]
    public void Faults_of_a_loop_have_parts_only_where_a_loop_is_described()
    {
        Assert.Empty(FaultCatalogue.PartNames(SensorLoopFaults.Chips, With(null)));
        Assert.Equal(["s+brown", "s+blue", "s+black"], FaultCatalogue.PartNames(SensorLoopFaults.CoreBroken, With(new SensorLoopDescription())));
        Assert.Equal(["s+brown+blue", "s+brown+black", "s+blue+black"], FaultCatalogue.PartNames(SensorLoopFaults.CoresSwapped, With(new SensorLoopDescription())));
    }

    [Fact]
    public void In_how_many_cuts_time_passes_changes_nothing()
    {
        var loop = new SensorLoopDescription { Switch = new() { Output = SwitchOutput.DryContact, Bounce = BounceDescription.Usual, Principle = SensingPrinciple.Mechanical } };
        LubricationSystem whole = With(loop).Running();
        whole.AdvanceTo(EndUs);
        LubricationSystem cut = With(loop).Running();
        for (long at = 1_000_003; at < EndUs; at += 777_777)
            cut.AdvanceTo(at);
        cut.AdvanceTo(EndUs);
        Readings.AssertSame(whole, cut);
    }

    [Fact]
    public void A_running_loop_allocates_nothing()
    {
        LubricationSystem system = With(new SensorLoopDescription { Switch = new() { SwitchingFrequencyHz = 500, ReadyDelayUs = 1000 } }).Running();
        system.AdvanceTo(30_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        system.AdvanceTo(EndUs);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static PlantDescription With(SensorLoopDescription? loop, SwitchContact contact = SwitchContact.NormallyOpen) =>
        Plants.Twin(3).WithSwitch(new CycleSwitchDescription { Name = "s", Section = "1", Contact = contact, Sensor = loop });

    private static List<(long Us, bool On)> Levels(PlantDescription plant, Action<LubricationSystem>? fault = null)
    {
        LubricationSystem system = plant.Running();
        fault?.Invoke(system);
        return Levels(system);
    }

    private static List<(long Us, bool On)> Levels(LubricationSystem system)
    {
        var edges = new List<(long, bool)>();
        bool last = system.CycleSwitchOn(0);
        while (system.NextEventUs <= EndUs)
        {
            system.AdvanceTo(system.NextEventUs);
            if (system.CycleSwitchOn(0) != last)
                edges.Add((system.NowUs, !last));
            last = system.CycleSwitchOn(0);
        }

        return edges;
    }
}
