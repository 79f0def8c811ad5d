using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pistons;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class SensorTests
{
    [Theory]
    [InlineData(Side.R)]
    [InlineData(Side.L)]
    public void A_cycle_switch_trips_near_its_end_and_releases_behind_its_hysteresis(Side end)
    {
        LubricationSystem system = Plants.Twin(3)
            .Starting(end == Side.R ? [0, 0, 0] : [1, 1, 1])
            .WithSwitch(new CycleSwitchDescription { Name = "s", Section = "1", End = end, TripTravel = 0.2, Hysteresis = 0.1 })
            .Running();
        double travelAtChange = Change(system);
        Assert.True(system.CycleSwitchOn(0));
        Assert.Equal(end == Side.R ? 0.8 : 0.2, travelAtChange, 5);

        travelAtChange = Change(system);
        Assert.False(system.CycleSwitchOn(0));
        Assert.Equal(end == Side.R ? 0.7 : 0.3, travelAtChange, 5);
        Assert.Equal(1, system.TripCrossings(0));
    }

    [Fact]
    public void A_normally_closed_contact_reads_the_other_way_and_a_broken_wire_reads_off()
    {
        LubricationSystem system = Plants.Twin(3)
            .WithSwitch(new CycleSwitchDescription { Name = "nc", Section = "1", Contact = SwitchContact.NormallyClosed })
            .Running();
        Assert.True(system.CycleSwitchOn(0));

        system.ApplyFault(CycleSwitchFaults.WireBroken, "nc");
        Assert.False(system.CycleSwitchOn(0));
        system.HealFault(CycleSwitchFaults.WireBroken, "nc");
        Assert.True(system.CycleSwitchOn(0));

        system.AdvanceTo(1_000_001);
        Assert.True(system.CycleSwitchActuated(0));
        Assert.False(system.CycleSwitchOn(0));
    }

    [Fact]
    public void Stuck_cycle_switches_read_as_stuck_while_trip_crossings_go_on()
    {
        LubricationSystem system = Plants.Twin(3).WithSwitch(new CycleSwitchDescription { Name = "s", Section = "1" }).Running();
        system.ApplyFault(CycleSwitchFaults.StuckOn, "s");
        Assert.Equal(0, Levels(system, 60_000_000, out bool last));
        Assert.True(last);
        system.HealAllFaults();
        system.ApplyFault(CycleSwitchFaults.StuckOff, "s");
        Assert.Equal(0, Levels(system, 120_000_000, out last));
        Assert.False(last);
        Assert.Equal(20, system.TripCrossings(0));
    }

    [Fact]
    public void A_chattering_switch_toggles_irregularly_and_as_its_seed_says()
    {
        PlantDescription plant = Plants.Twin(3).WithSwitch(new CycleSwitchDescription { Name = "s", Section = "1" });
        List<long> first = Toggles(plant, 7);
        Assert.Equal(first, Toggles(plant, 7));
        Assert.NotEqual(first, Toggles(plant, 8));
        Assert.InRange(first.Count, 60, 150);
        for (int i = 1; i < first.Count; i++)
            Assert.InRange(first[i] - first[i - 1], 50_000, 150_002);
    }

    [Fact]
    public void The_pressure_switch_trips_and_resets_at_its_two_pressures()
    {
        PlantDescription plant = Plants.Twin(3) with
        {
            PressureSwitch = new PressureSwitchDescription { TripPa = 140 * Plants.Bar, ResetPa = 70 * Plants.Bar },
        };
        LubricationSystem system = plant.Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(999_990);
        Assert.False(system.PressureSwitchOn);
        system.AdvanceTo(1_000_001);
        Assert.True(system.PressureSwitchOn);

        system.SetPumpContact(false);
        system.ApplyFault(LineFaults.Leak, value: 12 * Plants.Cm3PerMin);

        // 2e-7 m3/s at 100 bar out of 20 cm3 at 1.4 GPa: half the pressure is gone after ln 2 x R C = 0.4951 s.
        system.AdvanceTo(1_494_600);
        Assert.True(system.PressureSwitchOn);
        system.AdvanceTo(1_495_600);
        Assert.False(system.PressureSwitchOn);

        system.ApplyFault(PressureSwitchFaults.StuckOn);
        Assert.True(system.PressureSwitchOn);
        system.ApplyFault(PressureSwitchFaults.StuckOff);
        system.HealFault(PressureSwitchFaults.StuckOn);
        Assert.False(system.PressureSwitchOn);
    }

    [Fact]
    public void Level_switches_act_at_their_levels_and_release_above_their_hysteresis()
    {
        PlantDescription plant = Plants.Twin(3);
        LubricationSystem system = (plant with
        {
            Reservoir = new ReservoirDescription
            {
                CapacityM3 = 1e-4,
                ContentM3 = 10 * Plants.Cm3,
                LowLevelM3 = 8 * Plants.Cm3,
                EmptyLevelM3 = 4 * Plants.Cm3,
                LevelHysteresisM3 = 1 * Plants.Cm3,
                EmptyContact = SwitchContact.NormallyClosed,
            },
        }).Running();

        system.AdvanceTo(9_999_000);
        Assert.False(system.LevelLow);
        Assert.True(system.LevelEmpty);
        system.AdvanceTo(10_000_001);
        Assert.True(system.LevelLow);
        system.AdvanceTo(30_000_001);
        Assert.False(system.LevelEmpty);

        system.Refill(8.5 * Plants.Cm3);
        Assert.True(system.LevelLow);
        Assert.True(system.LevelEmpty);
        system.Refill(9 * Plants.Cm3);
        Assert.False(system.LevelLow);

        system.ApplyFault(LevelSwitchFaults.StuckOn, "low");
        Assert.True(system.LevelLow);
        Assert.True(system.LevelEmpty);
        system.ApplyFault(LevelSwitchFaults.StuckOff, "empty");
        Assert.False(system.LevelEmpty);
    }

    [Fact]
    public void Trip_crossings_times_cycle_volume_stay_within_one_cycle_of_what_the_pistons_displaced()
    {
        PlantDescription plant = Plants.Twin(5)
            .WithSwitch(new CycleSwitchDescription { Name = "a", Section = "1", End = Side.L })
            .WithSwitch(new CycleSwitchDescription { Name = "b", Section = "4", TripTravel = 0.5, Hysteresis = 0 });
        LubricationSystem system = plant.Running();
        while (system.NowUs < 600_000_000)
        {
            Assert.NotEqual(long.MaxValue, system.NextEventUs);
            system.AdvanceTo(system.NextEventUs);
            Assert.InRange(system.TripVolumeDifferenceM3(0), 0, system.FullCycleVolumeM3);
            Assert.InRange(system.TripVolumeDifferenceM3(1), 0, system.FullCycleVolumeM3);
        }

        Assert.True(system.TripCrossings(0) > 50);
    }

    [Fact]
    public void Temperature_is_what_was_set_last()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);
        Assert.Equal(293.15, system.TemperatureK);
        system.SetTemperature(263.15);
        Assert.Equal(263.15, system.TemperatureK);
        Assert.Throws<System.ArgumentOutOfRangeException>(() => system.SetTemperature(20));
    }

    private static double Change(LubricationSystem system)
    {
        bool before = system.CycleSwitchOn(0);
        for (int i = 0; i < 1000 && system.CycleSwitchOn(0) == before; i++)
            system.AdvanceTo(system.NextEventUs);
        return system.PistonTravel(0);
    }

    private static int Levels(LubricationSystem system, long untilUs, out bool last)
    {
        int changes = 0;
        last = system.CycleSwitchOn(0);
        while (system.NextEventUs <= untilUs)
        {
            system.AdvanceTo(system.NextEventUs);
            changes += system.CycleSwitchOn(0) == last ? 0 : 1;
            last = system.CycleSwitchOn(0);
        }

        return changes;
    }

    private static List<long> Toggles(PlantDescription plant, ulong seed)
    {
        var system = new LubricationSystem(plant, seed);
        system.ApplyFault(CycleSwitchFaults.Chattering, "s", 0.1);
        var times = new List<long>();
        bool level = system.CycleSwitchOn(0);
        while (system.NextEventUs <= 10_000_000)
        {
            system.AdvanceTo(system.NextEventUs);
            if (system.CycleSwitchOn(0) != level)
                times.Add(system.NowUs);
            level = system.CycleSwitchOn(0);
        }

        return times;
    }
}
