using System;
using System.Linq;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>A fault counts as having taken effect where a part behaves otherwise than the sound one, and nowhere else.</summary>
public sealed class FaultLogTests
{
    private static readonly PlantDescription Plant = Plants.Twin(3)
        .WithSwitch(new CycleSwitchDescription { Name = "cycle", Section = "3" })
        with
    {
        PressureSwitch = new PressureSwitchDescription { TripPa = 150 * Plants.Bar, ResetPa = 120 * Plants.Bar },
        Shaft = new ShaftDescription { InitialSpeedRevPerS = 2 },
    };

    [Theory]
    [InlineData("cycle-switch-stuck-on", "cycle")]
    [InlineData("cycle-switch-stuck-off", "cycle")]
    [InlineData("cycle-switch-wire-broken", "cycle")]
    [InlineData("cycle-switch-wire-loose", "cycle")]
    public void A_cycle_switch_that_reads_wrongly_counts_from_the_first_difference(string name, string part)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        LubricationSystem sound = Plant.Running();
        LubricationSystem faulted = Plant.Running();
        faulted.ApplyFault(kind, part);

        while (sound.NowUs < 20_000_000 && faulted.CycleSwitchOn(0) == sound.CycleSwitchOn(0))
        {
            Assert.False(faulted.TookEffect(kind, part));
            long next = Math.Min(sound.NextEventUs, faulted.NextEventUs);
            sound.AdvanceTo(next);
            faulted.AdvanceTo(next);
        }

        Assert.True(faulted.TookEffect(kind, part));
        Assert.Equal(faulted.NowUs, Assert.Single(faulted.FaultLog.Entries).EffectUs);
    }

    [Fact]
    public void A_switch_that_sticks_where_it_stands_takes_no_effect_until_it_should_change()
    {
        var system = new LubricationSystem(Plant, 1);
        Fault same = system.CycleSwitchOn(0) ? CycleSwitchFaults.StuckOn : CycleSwitchFaults.StuckOff;
        system.ApplyFault(same, "cycle");
        system.ApplyFault(LevelSwitchFaults.StuckOff, "low");
        system.ApplyFault(LevelSwitchFaults.StuckOn, "empty");
        system.ApplyFault(PressureSwitchFaults.StuckOff);
        system.AdvanceTo(60_000_000);

        Assert.Equal(
            [same, LevelSwitchFaults.StuckOff, PressureSwitchFaults.StuckOff],
            system.FaultLog.WithoutEffect.Select(entry => entry.Fault));

        system.SetPumpContact(true);
        system.ApplyFault(ReservoirFaults.Empty);
        system.HealFault(ReservoirFaults.Empty);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(120_000_000);
        Assert.Equal([same], system.FaultLog.WithoutEffect.Select(entry => entry.Fault));
    }

    [Fact]
    public void Of_two_faults_of_one_switch_only_the_one_that_decides_the_level_counts()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(CycleSwitchFaults.WireBroken, "cycle");
        system.ApplyFault(CycleSwitchFaults.StuckOn, "cycle");
        system.ApplyFault(CycleSwitchFaults.Chattering, "cycle");
        system.AdvanceTo(20_000_000);
        Assert.True(system.TookEffect(CycleSwitchFaults.WireBroken, "cycle"));
        Assert.False(system.TookEffect(CycleSwitchFaults.StuckOn, "cycle"));
        Assert.False(system.TookEffect(CycleSwitchFaults.Chattering, "cycle"));

        system.HealFault(CycleSwitchFaults.WireBroken, "cycle");
        system.AdvanceTo(40_000_000);
        Assert.True(system.TookEffect(CycleSwitchFaults.StuckOn, "cycle"));
        Assert.False(system.TookEffect(CycleSwitchFaults.Chattering, "cycle"));

        system.HealFault(CycleSwitchFaults.StuckOn, "cycle");
        system.AdvanceTo(60_000_000);
        Assert.True(system.TookEffect(CycleSwitchFaults.Chattering, "cycle"));
    }

    [Theory]
    [InlineData(0, 10_000_000, false)]
    [InlineData(2, 400_000, false)]
    [InlineData(2, 600_000, true)]
    public void A_lost_shaft_switch_counts_once_a_pulse_was_missed(double revPerS, long forUs, bool effect)
    {
        var system = new LubricationSystem(Plant with { Shaft = new ShaftDescription { InitialSpeedRevPerS = revPerS } }, 1);
        system.AdvanceTo(5_000_001);
        system.ApplyFault(ShaftFaults.SwitchLost);
        system.AdvanceTo(5_000_001 + forUs);
        system.SetShaftSpeed(0);
        system.AdvanceTo(60_000_000);
        system.HealFault(ShaftFaults.SwitchLost);

        Assert.Equal(effect, system.TookEffect(ShaftFaults.SwitchLost));
        Assert.Equal((5_000_001, 60_000_000), (system.FaultLog.Entries[0].AppliedUs, system.FaultLog.Entries[0].EndedUs));
    }

    [Fact]
    public void Pulses_too_short_for_a_sound_switch_are_not_missed()
    {
        var system = new LubricationSystem(Plant with { Shaft = new ShaftDescription { InitialSpeedRevPerS = 100, MinimumPulseWidthUs = 50_000 } }, 1);
        system.ApplyFault(ShaftFaults.SwitchLost);
        system.AdvanceTo(10_000_000);
        system.NoteFaultEffects();
        Assert.False(system.TookEffect(ShaftFaults.SwitchLost));

        system.SetShaftSpeed(2);
        system.AdvanceTo(20_000_000);
        system.NoteFaultEffects();
        Assert.True(system.TookEffect(ShaftFaults.SwitchLost));
    }

    [Fact]
    public void Each_application_has_an_entry_and_a_growing_one_keeps_its_own()
    {
        LubricationSystem system = Plant.Running();
        int first = system.ApplyFault(PumpFaults.Worn, value: 0.9);
        Assert.Equal(first, system.ApplyFault(PumpFaults.Worn, value: 0.9));
        Assert.True(system.AdjustFault(PumpFaults.Worn, "", 0.8));
        ActiveFault worn = Assert.Single(system.Faults);
        Assert.Equal((PumpFaults.Worn, "", 0.8, 1e7, first), (worn.Fault, worn.Part, worn.Value, worn.Second, worn.Entry));

        system.AdvanceTo(1_000_000);
        int second = system.ApplyFault(PumpFaults.Worn, value: 0.5);
        Assert.NotEqual(first, second);
        Assert.Equal(1_000_000, system.FaultLog.Entries[first].EndedUs);

        system.HealFault(PumpFaults.Worn);
        Assert.False(system.AdjustFault(PumpFaults.Worn, "", 0.4));
        Assert.Empty(system.Faults);
        Assert.Equal(2, system.FaultLog.Entries.Count);
        Assert.Throws<ArgumentException>(() => system.AdjustFault(PumpFaults.Worn, "", 1.5));
        Assert.Throws<ArgumentException>(() => system.AdjustFault(PumpFaults.Off, "", 1));
    }

    /// <summary>Each fault of pump, line, divider and outlets that acts on what moves: in a plant at rest it is not put to the test.</summary>
    [Theory]
    [InlineData("outlet-blocked", "1R")]
    [InlineData("outlet-restricted", "1R")]
    [InlineData("outlet-line-leaking", "1R")]
    [InlineData("outlet-back-pressure", "1R")]
    [InlineData("piston-stiff", "2")]
    [InlineData("piston-worn", "2")]
    [InlineData("piston-stuck", "2")]
    [InlineData("inlet-blocked", "")]
    [InlineData("suction-blocked", "")]
    [InlineData("suction-aerated", "")]
    [InlineData("filling-poor", "")]
    [InlineData("pump-off", "")]
    [InlineData("pump-seized", "")]
    [InlineData("pump-worn", "")]
    [InlineData("pump-slow", "")]
    [InlineData("motor-supply-low", "")]
    [InlineData("lubricant-temperature-off", "")]
    [InlineData("line-leak", "")]
    [InlineData("line-burst", "")]
    [InlineData("check-valve-leaking", "")]
    [InlineData("relief-stuck-open", "")]
    public void A_fault_of_what_moves_takes_effect_once_the_pump_runs_and_not_before(string name, string part)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        var system = new LubricationSystem(Plant, 1);
        system.ApplyFault(kind, part);
        system.AdvanceTo(60_000_000);
        system.NoteFaultEffects();
        Assert.False(system.TookEffect(kind, part));

        system.SetPumpContact(true);
        system.AdvanceTo(120_000_000);
        Assert.True(system.TookEffect(kind, part));
    }

    [Fact]
    public void A_point_that_holds_against_more_than_the_line_ever_has_counts_as_soon_as_its_piston_would_move()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(OutletFaults.BackPressure, "1R", 400 * Plants.Bar);
        system.AdvanceTo(120_000_000);
        Assert.True(system.TookEffect(OutletFaults.BackPressure, "1R"));
        Assert.Equal(0, system.OutletDeliveredM3(system.FindOutlet("1R")));
    }

    [Fact]
    public void A_relief_valve_stuck_closed_counts_where_the_sound_one_would_open()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.AdvanceTo(60_000_000);
        Assert.False(system.TookEffect(ValveFaults.ReliefStuckClosed));

        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(120_000_000);
        Assert.True(system.TookEffect(ValveFaults.ReliefStuckClosed));
    }

    [Fact]
    public void A_fault_at_its_harmless_magnitude_takes_no_effect_until_it_grows()
    {
        LubricationSystem system = Plant.Running();
        int entry = system.ApplyFault(PumpFaults.Worn, value: 1);
        system.AdvanceTo(20_000_000);
        Assert.False(system.FaultLog.Entries[entry].TookEffect);

        system.AdjustFault(PumpFaults.Worn, "", 0.99);
        system.AdvanceTo(40_000_000);
        Assert.True(system.FaultLog.Entries[entry].TookEffect);
    }

    [Fact]
    public void A_loose_wire_is_off_and_whole_for_its_mean_times_and_leaves_the_contact_alone()
    {
        var system = new LubricationSystem(Plants.Twin(3).WithSwitch(new CycleSwitchDescription { Name = "cycle", Section = "3", Contact = SwitchContact.NormallyClosed }), 7);
        bool whole = system.CycleSwitchOn(0);
        system.SetPumpContact(false);
        system.ApplyFault(CycleSwitchFaults.WireLoose, "cycle", 0.1, 0.4);
        Assert.True(whole);
        Assert.False(system.CycleSwitchOn(0));
        double offUs = 0;
        int interruptions = 0;
        for (bool wasOn = false; system.NextEventUs < 600_000_000; wasOn = system.CycleSwitchOn(0))
        {
            long before = system.NowUs;
            system.AdvanceTo(system.NextEventUs);
            offUs += wasOn ? 0 : system.NowUs - before;
            interruptions += wasOn && !system.CycleSwitchOn(0) ? 1 : 0;
        }

        // 600 s of 0.5 s each, a fifth of it off.
        Assert.InRange(interruptions, 1150, 1250);
        Assert.InRange(offUs, 114e6, 126e6);
        system.HealFault(CycleSwitchFaults.WireLoose, "cycle");
        Assert.True(system.CycleSwitchOn(0));
        Assert.Equal(long.MaxValue, system.NextEventUs);
        Assert.Contains("on-time", Assert.Throws<ArgumentException>(() => system.ApplyFault(CycleSwitchFaults.WireLoose, "cycle", 0.1, -1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => system.ApplyFault(CycleSwitchFaults.Chattering, "cycle", 0.1, 1));
    }

    [Fact]
    public void Marking_an_effect_allocates_nothing()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(CycleSwitchFaults.StuckOff, "cycle");
        system.ApplyFault(LevelSwitchFaults.StuckOff, "low");
        system.AdvanceTo(1_000_000);
        system.NoteFaultEffects();
        long before = GC.GetAllocatedBytesForCurrentThread();
        system.AdvanceTo(60_000_000);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(system.TookEffect(CycleSwitchFaults.StuckOff, "cycle"));
        Assert.Equal(0, allocated);
    }
}
