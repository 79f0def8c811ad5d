using System;
using System.Linq;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
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
    [InlineData(FaultKind.CycleSwitchStuckOn, "cycle")]
    [InlineData(FaultKind.CycleSwitchStuckOff, "cycle")]
    [InlineData(FaultKind.CycleSwitchWireBroken, "cycle")]
    [InlineData(FaultKind.CycleSwitchWireLoose, "cycle")]
    public void A_cycle_switch_that_reads_wrongly_counts_from_the_first_difference(FaultKind kind, string part)
    {
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
        FaultKind same = system.CycleSwitchOn(0) ? FaultKind.CycleSwitchStuckOn : FaultKind.CycleSwitchStuckOff;
        system.ApplyFault(same, "cycle");
        system.ApplyFault(FaultKind.LevelSwitchStuckOff, "low");
        system.ApplyFault(FaultKind.LevelSwitchStuckOn, "empty");
        system.ApplyFault(FaultKind.PressureSwitchStuckOff);
        system.AdvanceTo(60_000_000);

        Assert.Equal(
            [same, FaultKind.LevelSwitchStuckOff, FaultKind.PressureSwitchStuckOff],
            system.FaultLog.WithoutEffect.Select(entry => entry.Kind));

        system.SetPumpContact(true);
        system.ApplyFault(FaultKind.ReservoirEmpty);
        system.HealFault(FaultKind.ReservoirEmpty);
        system.ApplyFault(FaultKind.InletBlocked);
        system.AdvanceTo(120_000_000);
        Assert.Equal([same], system.FaultLog.WithoutEffect.Select(entry => entry.Kind));
    }

    [Fact]
    public void Of_two_faults_of_one_switch_only_the_one_that_decides_the_level_counts()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(FaultKind.CycleSwitchWireBroken, "cycle");
        system.ApplyFault(FaultKind.CycleSwitchStuckOn, "cycle");
        system.ApplyFault(FaultKind.CycleSwitchChattering, "cycle");
        system.AdvanceTo(20_000_000);
        Assert.True(system.TookEffect(FaultKind.CycleSwitchWireBroken, "cycle"));
        Assert.False(system.TookEffect(FaultKind.CycleSwitchStuckOn, "cycle"));
        Assert.False(system.TookEffect(FaultKind.CycleSwitchChattering, "cycle"));

        system.HealFault(FaultKind.CycleSwitchWireBroken, "cycle");
        system.AdvanceTo(40_000_000);
        Assert.True(system.TookEffect(FaultKind.CycleSwitchStuckOn, "cycle"));
        Assert.False(system.TookEffect(FaultKind.CycleSwitchChattering, "cycle"));

        system.HealFault(FaultKind.CycleSwitchStuckOn, "cycle");
        system.AdvanceTo(60_000_000);
        Assert.True(system.TookEffect(FaultKind.CycleSwitchChattering, "cycle"));
    }

    [Theory]
    [InlineData(0, 10_000_000, false)]
    [InlineData(2, 400_000, false)]
    [InlineData(2, 600_000, true)]
    public void A_lost_shaft_switch_counts_once_a_pulse_was_missed(double revPerS, long forUs, bool effect)
    {
        var system = new LubricationSystem(Plant with { Shaft = new ShaftDescription { InitialSpeedRevPerS = revPerS } }, 1);
        system.AdvanceTo(5_000_001);
        system.ApplyFault(FaultKind.ShaftSwitchLost);
        system.AdvanceTo(5_000_001 + forUs);
        system.SetShaftSpeed(0);
        system.AdvanceTo(60_000_000);
        system.HealFault(FaultKind.ShaftSwitchLost);

        Assert.Equal(effect, system.TookEffect(FaultKind.ShaftSwitchLost));
        Assert.Equal((5_000_001, 60_000_000), (system.FaultLog.Entries[0].AppliedUs, system.FaultLog.Entries[0].EndedUs));
    }

    [Fact]
    public void Pulses_too_short_for_a_sound_switch_are_not_missed()
    {
        var system = new LubricationSystem(Plant with { Shaft = new ShaftDescription { InitialSpeedRevPerS = 100, MinimumPulseWidthUs = 50_000 } }, 1);
        system.ApplyFault(FaultKind.ShaftSwitchLost);
        system.AdvanceTo(10_000_000);
        system.NoteFaultEffects();
        Assert.False(system.TookEffect(FaultKind.ShaftSwitchLost));

        system.SetShaftSpeed(2);
        system.AdvanceTo(20_000_000);
        system.NoteFaultEffects();
        Assert.True(system.TookEffect(FaultKind.ShaftSwitchLost));
    }

    [Fact]
    public void Each_application_has_an_entry_and_a_growing_one_keeps_its_own()
    {
        LubricationSystem system = Plant.Running();
        int first = system.ApplyFault(FaultKind.PumpWorn, value: 0.9);
        Assert.Equal(first, system.ApplyFault(FaultKind.PumpWorn, value: 0.9));
        Assert.True(system.AdjustFault(FaultKind.PumpWorn, "", 0.8));
        Assert.Equal([new ActiveFault(FaultKind.PumpWorn, "", 0.8) { Second = 1e7, Entry = first }], system.Faults);

        system.AdvanceTo(1_000_000);
        int second = system.ApplyFault(FaultKind.PumpWorn, value: 0.5);
        Assert.NotEqual(first, second);
        Assert.Equal(1_000_000, system.FaultLog.Entries[first].EndedUs);

        system.HealFault(FaultKind.PumpWorn);
        Assert.False(system.AdjustFault(FaultKind.PumpWorn, "", 0.4));
        Assert.Empty(system.Faults);
        Assert.Equal(2, system.FaultLog.Entries.Count);
        Assert.Throws<ArgumentException>(() => system.AdjustFault(FaultKind.PumpWorn, "", 1.5));
        Assert.Throws<ArgumentException>(() => system.AdjustFault(FaultKind.PumpOff, "", 1));
    }

    /// <summary>Each fault of pump, line, divider and outlets that acts on what moves: in a plant at rest it is not put to the test.</summary>
    [Theory]
    [InlineData(FaultKind.OutletBlocked, "1R")]
    [InlineData(FaultKind.OutletRestricted, "1R")]
    [InlineData(FaultKind.OutletLineLeaking, "1R")]
    [InlineData(FaultKind.OutletBackPressure, "1R")]
    [InlineData(FaultKind.PistonStiff, "2")]
    [InlineData(FaultKind.PistonWorn, "2")]
    [InlineData(FaultKind.PistonStuck, "2")]
    [InlineData(FaultKind.InletBlocked, "")]
    [InlineData(FaultKind.SuctionBlocked, "")]
    [InlineData(FaultKind.SuctionAerated, "")]
    [InlineData(FaultKind.FillingPoor, "")]
    [InlineData(FaultKind.PumpOff, "")]
    [InlineData(FaultKind.PumpSeized, "")]
    [InlineData(FaultKind.PumpWorn, "")]
    [InlineData(FaultKind.PumpSlow, "")]
    [InlineData(FaultKind.MotorSupplyLow, "")]
    [InlineData(FaultKind.LubricantTemperatureOff, "")]
    [InlineData(FaultKind.LineLeak, "")]
    [InlineData(FaultKind.LineBurst, "")]
    [InlineData(FaultKind.CheckValveLeaking, "")]
    [InlineData(FaultKind.ReliefStuckOpen, "")]
    public void A_fault_of_what_moves_takes_effect_once_the_pump_runs_and_not_before(FaultKind kind, string part)
    {
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
        system.ApplyFault(FaultKind.OutletBackPressure, "1R", 400 * Plants.Bar);
        system.AdvanceTo(120_000_000);
        Assert.True(system.TookEffect(FaultKind.OutletBackPressure, "1R"));
        Assert.Equal(0, system.OutletDeliveredM3(system.FindOutlet("1R")));
    }

    [Fact]
    public void A_relief_valve_stuck_closed_counts_where_the_sound_one_would_open()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(FaultKind.ReliefStuckClosed);
        system.AdvanceTo(60_000_000);
        Assert.False(system.TookEffect(FaultKind.ReliefStuckClosed));

        system.ApplyFault(FaultKind.InletBlocked);
        system.AdvanceTo(120_000_000);
        Assert.True(system.TookEffect(FaultKind.ReliefStuckClosed));
    }

    [Fact]
    public void A_fault_at_its_harmless_magnitude_takes_no_effect_until_it_grows()
    {
        LubricationSystem system = Plant.Running();
        int entry = system.ApplyFault(FaultKind.PumpWorn, value: 1);
        system.AdvanceTo(20_000_000);
        Assert.False(system.FaultLog.Entries[entry].TookEffect);

        system.AdjustFault(FaultKind.PumpWorn, "", 0.99);
        system.AdvanceTo(40_000_000);
        Assert.True(system.FaultLog.Entries[entry].TookEffect);
    }

    [Fact]
    public void A_loose_wire_is_off_and_whole_for_its_mean_times_and_leaves_the_contact_alone()
    {
        var system = new LubricationSystem(Plants.Twin(3).WithSwitch(new CycleSwitchDescription { Name = "cycle", Section = "3", Contact = SwitchContact.NormallyClosed }), 7);
        bool whole = system.CycleSwitchOn(0);
        system.SetPumpContact(false);
        system.ApplyFault(FaultKind.CycleSwitchWireLoose, "cycle", 0.1, 0.4);
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
        system.HealFault(FaultKind.CycleSwitchWireLoose, "cycle");
        Assert.True(system.CycleSwitchOn(0));
        Assert.Equal(long.MaxValue, system.NextEventUs);
        Assert.Contains("on-time", Assert.Throws<ArgumentException>(() => system.ApplyFault(FaultKind.CycleSwitchWireLoose, "cycle", 0.1, -1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => system.ApplyFault(FaultKind.CycleSwitchChattering, "cycle", 0.1, 1));
    }

    [Fact]
    public void Marking_an_effect_allocates_nothing()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(FaultKind.CycleSwitchStuckOff, "cycle");
        system.ApplyFault(FaultKind.LevelSwitchStuckOff, "low");
        system.AdvanceTo(1_000_000);
        system.NoteFaultEffects();
        long before = GC.GetAllocatedBytesForCurrentThread();
        system.AdvanceTo(60_000_000);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(system.TookEffect(FaultKind.CycleSwitchStuckOff, "cycle"));
        Assert.Equal(0, allocated);
    }
}
