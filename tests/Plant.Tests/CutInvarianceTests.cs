using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;
using LubeController.Tests.Draws;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class CutInvarianceTests
{
    private const long EndUs = 120_000_000;

    private static readonly Gen<PlantCommand[]> Commands = Generators.PlantCommands(EndUs, 25);

    private static readonly Gen<PlantDescription> AnyPlant =
        Gen.Select(Gen.Int[3, 9], Gen.Bool, Gen.Bool, Gen.Double[0.05, 0.5].Array[9], Gen.Int[0, 511], Gen.Double[0, 1].Array[9]).Select(Describe);

    [Fact]
    public void However_time_is_cut_the_state_is_the_same_to_the_bit()
    {
        long events = 0;
        Gen.Select(AnyPlant, Commands, Gen.Long[0, EndUs].Array[0, 60], Gen.ULong).Sample((plant, commands, cuts, seed) =>
        {
            LubricationSystem whole = Run(plant, commands, [], seed);
            LubricationSystem cut = Run(plant, commands, cuts, seed);

            Readings.AssertSame(whole, cut);
            Assert.Equal(whole.Balance(), cut.Balance());
            Assert.Equal(whole.FaultLog.Entries, cut.FaultLog.Entries);
            Assert.Equal(whole.NextEventUs, cut.NextEventUs);
            Assert.Equal(
                Enumerable.Range(0, whole.SectionCount).Select(whole.PistonTravel),
                Enumerable.Range(0, cut.SectionCount).Select(cut.PistonTravel));
            Assert.InRange(whole.Balance().RelativeError, 0, 1e-9);
            System.Threading.Interlocked.Add(ref events, whole.EventCount);
        });
        Assert.True(events > 10_000);
    }

    [Fact]
    public void Stepping_from_event_to_event_is_a_cut_like_any_other() =>
        Gen.Select(AnyPlant, Commands, Gen.ULong).Sample((plant, commands, seed) =>
        {
            LubricationSystem whole = Run(plant, commands, [], seed);
            var stepped = new LubricationSystem(plant, seed);
            foreach (PlantCommand command in commands)
            {
                stepped.Exhaust(command.AtUs);
                stepped.AdvanceTo(command.AtUs);
                command.Do(stepped);
            }

            stepped.Exhaust(EndUs);
            stepped.AdvanceTo(EndUs);
            Readings.AssertSame(whole, stepped);
        });

    [Fact]
    public void Between_two_events_every_quantity_lies_on_a_straight_line_and_no_switch_changes() =>
        Gen.Select(AnyPlant, Gen.Int[1, 200]).Sample((plant, steps) =>
        {
            LubricationSystem system = plant.Running();
            for (int i = 0; i < steps && system.NextEventUs < EndUs; i++)
                system.AdvanceTo(system.NextEventUs);
            // An event's instant may lie up to a nanosecond behind the microsecond that shows it.
            long from = system.NowUs + 1;
            long span = (Math.Min(system.NextEventUs, EndUs) - 1 - from) / 2;
            if (span <= 0)
                return;
            system.AdvanceTo(from);
            (double[] a, ulong switchesA) = Values(system);
            system.AdvanceTo(from + span);
            (double[] b, _) = Values(system);
            system.AdvanceTo(from + (2 * span));
            (double[] c, ulong switchesC) = Values(system);
            for (int i = 0; i < a.Length; i++)
                Assert.Equal((a[i] + c[i]) / 2, b[i], Math.Max(Math.Abs(a[i]), Math.Abs(c[i])) * 1e-11);
            Assert.Equal(switchesA, switchesC);
        });

    [Fact]
    public void The_same_command_again_changes_nothing()
    {
        LubricationSystem once = Plants.Twin(5).Running();
        LubricationSystem twice = Plants.Twin(5).Running();
        once.ApplyFault(PumpFaults.Worn, value: 0.7);
        twice.ApplyFault(PumpFaults.Worn, value: 0.7);
        for (long t = 0; t < 60_000_000; t += 777_777)
        {
            twice.AdvanceTo(t);
            twice.SetPumpContact(true);
            twice.ApplyFault(PumpFaults.Worn, value: 0.7);
            twice.HealFault(PumpFaults.Off);
        }

        once.AdvanceTo(60_000_000);
        twice.AdvanceTo(60_000_000);
        Readings.AssertSame(once, twice);
    }

    [Fact]
    public void A_fault_that_hardly_matters_shows_in_the_readings()
    {
        LubricationSystem sound = Plants.Twin(5).Running();
        LubricationSystem worn = Plants.Twin(5).Running();
        worn.ApplyFault(PumpFaults.Worn, value: 0.999_999);
        worn.HealAllFaults();
        Assert.NotEqual(Readings.Read(sound)[^1], Readings.Read(worn)[^1]);
        worn = Plants.Twin(5).Running();
        worn.SetTemperature(worn.TemperatureK + 1e-6);
        sound.AdvanceTo(10_000_000);
        worn.AdvanceTo(10_000_000);
        Assert.NotEqual(Readings.Read(sound), Readings.Read(worn));
    }

    [Fact]
    public void Time_may_be_advanced_to_its_end_but_not_back()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);
        system.AdvanceTo(long.MaxValue);
        Assert.Equal(long.MaxValue, system.NowUs);
        Assert.Throws<ArgumentOutOfRangeException>(() => system.AdvanceTo(5));
    }

    private static (double[] Values, ulong Switches) Values(LubricationSystem system)
    {
        var values = new List<double> { system.LinePressurePa, system.ReservoirContentM3, system.PumpedM3, system.RelievedM3 };
        for (int i = 0; i < system.SectionCount; i++)
            values.Add(system.PistonTravel(i));
        for (int i = 0; i < system.OutletCount; i++)
            values.Add(system.OutletDeliveredM3(i));
        ulong switches = (system.LevelLow ? 1u : 0) | (system.LevelEmpty ? 2u : 0) | (system.PressureSwitchOn ? 4u : 0);
        for (int i = 0; i < system.CycleSwitchCount; i++)
            switches |= system.CycleSwitchOn(i) ? 8ul << i : 0;
        return ([.. values], switches);
    }

    private static LubricationSystem Run(PlantDescription plant, PlantCommand[] commands, long[] cuts, ulong seed)
    {
        var system = new LubricationSystem(plant, seed);
        long[] cutsInOrder = [.. cuts.Order()];
        int next = 0;
        foreach (PlantCommand command in commands)
        {
            while (next < cutsInOrder.Length && cutsInOrder[next] <= command.AtUs)
                system.AdvanceTo(cutsInOrder[next++]);
            system.AdvanceTo(command.AtUs);
            command.Do(system);
        }

        while (next < cutsInOrder.Length)
            system.AdvanceTo(cutsInOrder[next++]);
        system.AdvanceTo(EndUs);
        return system;
    }

    private static PlantDescription Describe(int n, bool cam, bool air, double[] volumes, int ends, double[] travels)
    {
        PlantDescription plant = Plants.Of([.. Enumerable.Range(0, n).Select(i => Plants.Section(i + 1, volumes[i] * Plants.Cm3) with
        {
            BreakawayPa = 5e5 + (travels[i] * 1e5),
            InitialTravel = (ends & (1 << i)) == 0 ? travels[i] : 0,
        })]);
        return (plant with
        {
            Pump = cam
                ? new CamPumpDescription { PistonBoreM = 6e-3, StrokeM = 8e-3, SpeedRevPerS = 1.7, VolumetricEfficiency = 0.9 }
                : new ConstantFlowPumpDescription { FlowM3PerS = 17 * Plants.Cm3PerMin },
            Lubricant = Lubricants.SteadyGrease(20, 2, 0.8),
            Line = plant.Line with
            {
                AirM3 = air ? 1e-7 : 0,
                StrainerLossPa = cam ? 1e4 : 0,
                Segments = air ? [] : [new LineSegmentDescription { LengthM = 2, BoreM = 5e-3, WallModulusPa = 1e9 }],
            },
            Transmitter = new PressureTransmitterDescription { LagS = air ? 0 : 0.2, Place = LinePlace.End },
            Gauge = new PressureTransmitterDescription { LagS = 1 },
            Reservoir = plant.Reservoir with { CapacityM3 = 1e-4, ContentM3 = 3e-5, LowLevelM3 = 2e-5, EmptyLevelM3 = 1e-5, LevelHysteresisM3 = 1e-6 },
            PressureSwitch = new PressureSwitchDescription { TripPa = 100 * Plants.Bar, ResetPa = 50 * Plants.Bar },
            Shaft = new ShaftDescription { InitialSpeedRevPerS = 3, MinimumPulseWidthUs = 20_000 },
        })
            .WithSwitch(new CycleSwitchDescription { Name = "a", Section = "1", End = Side.L })
            .WithSwitch(new CycleSwitchDescription { Name = "b", Section = "2", TripTravel = 0.3, Hysteresis = 0 });
    }
}
