using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Tests.Electrics;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class FaultTests
{
    private static readonly PlantDescription Plant = Plants.Twin(3)
        .WithSwitch(new CycleSwitchDescription { Name = "cycle", Section = "3" })
        with
    {
        PressureSwitch = new PressureSwitchDescription { TripPa = 150 * Plants.Bar, ResetPa = 120 * Plants.Bar },
        Shaft = new ShaftDescription { InitialSpeedRevPerS = 2 },
        Transmitter = new PressureTransmitterDescription(),
        Gauge = new PressureTransmitterDescription { LagS = 0.5 },
    };

    private static readonly PlantDescription Strained = Plant with
    {
        Line = new LineDescription { VolumeM3 = 20 * Plants.Cm3, BulkModulusPa = 1.4e9, StrainerLossPa = 1e4 },
        Wiring = WiringSamples.Plain,
        CycleSwitches = [Plant.CycleSwitches[0] with { Sensor = new SensorLoopDescription() }],
    };

    [Fact]
    public void Every_kind_is_in_the_catalogue_under_a_name_of_its_own()
    {
        Assert.Equal(Declared().OrderBy(f => f.Name), FaultCatalogue.All.OrderBy(f => f.Name));
        Assert.Equal(FaultCatalogue.All.Count, FaultCatalogue.All.Select(f => f.Name).Distinct().Count());
        Assert.All(FaultCatalogue.All, f => Assert.Same(f, FaultCatalogue.Find(f.Name)));
        Assert.All(FaultCatalogue.All.SelectMany(f => f.Parameters), p => Assert.InRange(p.Default, p.Minimum, p.Maximum));
        Assert.All(FaultCatalogue.All.SelectMany(f => f.Parameters), p => Assert.True(p.Harmless is not { } h || (h >= p.Minimum && h <= p.Maximum && h != p.Default), p.Name));
        Assert.All(FaultCatalogue.All, f => Assert.True(f.Second == null || f.Parameter != null, f.Name));
    }

    [Fact]
    public void Every_kind_says_in_sentences_what_changes_what_is_noticed_and_what_healing_leaves()
    {
        Assert.All(FaultCatalogue.All, f => Assert.Matches("^[A-Z][^.]+\\.$", f.Effect));
        Assert.All(FaultCatalogue.All, f => Assert.Matches("^[A-Z][^.]+\\.$", f.Noticed));
        Assert.All(FaultCatalogue.All, f => Assert.Matches("^[A-Z][^.]+\\.$", f.HealingNote));
        Assert.All(FaultCatalogue.All, f => Assert.Matches("^(an?|the|that|more|flow|lubricant|pressure|line pressure) [a-z][^.]*[^. ]$", f.Needs));
        Assert.All(FaultCatalogue.All, f => Assert.Matches("^the ", f.Place));
        Assert.Equal(FaultCatalogue.All.Count, FaultCatalogue.All.Select(f => f.Effect + f.Place).Distinct().Count());
        Assert.Equal(Enum.GetValues<FaultManner>(), FaultCatalogue.All.Select(f => f.Manner).Distinct().Order());
    }

    [Fact]
    public void Every_kind_can_be_applied_and_healed_on_each_part_that_it_names()
    {
        foreach (Fault fault in FaultCatalogue.All)
        {
            PlantDescription plant = FaultsByThing.OfASingleLine.Contains(fault) ? Plants.SingleLine() : Strained;
            Assert.NotEmpty(FaultCatalogue.PartNames(fault, plant));
            foreach (string part in FaultCatalogue.PartNames(fault, plant))
            {
                LubricationSystem system = plant.Running();
                system.AdvanceTo(1_234_567);
                system.ApplyFault(fault, part);
                Assert.True(system.IsFaulted(fault, part));
                Assert.Equal([(fault, part, fault.Parameter?.Default ?? 0, fault.Second?.Default ?? 0)], system.Faults.Select(active => (active.Fault, active.Part, active.Value, active.Second)));
                system.AdvanceTo(20_000_000);
                system.HealFault(fault, part);
                Assert.Empty(system.Faults);
                long strokes = Strokes(system);
                for (long at = 30_000_000; at <= 120_000_000; at += 10_000_000)
                {
                    system.SetVentValve(at % 20_000_000 == 0);
                    system.AdvanceTo(at);
                }

                Assert.True(Strokes(system) > strokes + (plant == Strained ? 50 : 3), $"{fault.Name} on '{part}': {strokes}, then {Strokes(system)}");
                Assert.InRange(system.Balance().RelativeError, 0, 1e-9);
            }
        }
    }

    /// <summary>Every fault that a type of the plant declares, whether somebody lists it or not.</summary>
    private static IEnumerable<Fault> Declared() => typeof(Fault).Assembly.GetExportedTypes()
        .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Static))
        .Where(property => property.PropertyType.IsAssignableTo(typeof(Fault)))
        .Select(property => (Fault)property.GetValue(null)!);

    private static long Strokes(LubricationSystem system)
    {
        long sum = system.TotalStrokes;
        for (int i = 0; i < system.InjectorCount; i++)
            sum += system.InjectorDischarges(i);
        return sum;
    }

    [Fact]
    public void A_part_that_is_not_there_and_a_value_out_of_range_are_refused_by_name()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);

        Assert.Contains("'9R'", Assert.Throws<ArgumentException>(() => system.ApplyFault(OutletFaults.Blocked, "9R")).Message, StringComparison.Ordinal);
        Assert.Contains("no such part", Assert.Throws<ArgumentException>(() => system.ApplyFault(ShaftFaults.SwitchLost)).Message, StringComparison.Ordinal);
        Assert.Contains("0 to 1", Assert.Throws<ArgumentException>(() => system.ApplyFault(PumpFaults.Worn, value: 1.5)).Message, StringComparison.Ordinal);
        Assert.Contains("NaN", Assert.Throws<ArgumentException>(() => system.ApplyFault(LineFaults.Leak, value: double.NaN)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => system.ApplyFault(PumpFaults.Off, value: 1));
        Assert.Empty(system.Faults);
    }

    [Fact]
    public void A_leak_takes_flow_in_proportion_to_pressure()
    {
        // 60 cm3/min at 100 bar are 3 cm3/min at the 5 bar that the pistons need.
        LubricationSystem system = Plant.Running();
        system.AdvanceTo(10_000_000);
        system.ApplyFault(LineFaults.Leak, value: 60 * Plants.Cm3PerMin);
        double displaced = system.DisplacedM3;

        system.AdvanceTo(70_000_000);
        Assert.Equal(3 * Plants.Cm3, system.LeakedM3, 1e-10);
        Assert.Equal(9 * Plants.Cm3, system.DisplacedM3 - displaced, 1e-9);

        system.SetPumpContact(false);
        system.AdvanceTo(170_000_000);
        Assert.Equal(0, system.LinePressurePa, 1.0);
        Assert.Equal(3 * Plants.Cm3 + (20 * Plants.Cm3 / 1.4e9 * 5e5), system.LeakedM3, 1e-10);
    }

    [Fact]
    public void A_large_leak_leaves_too_little_pressure_for_any_movement()
    {
        LubricationSystem system = Plant.Running();
        system.AdvanceTo(10_000_000);
        system.ApplyFault(LineFaults.Leak, value: 480 * Plants.Cm3PerMin);
        system.AdvanceTo(12_000_000);
        long strokes = system.TotalStrokes;

        system.AdvanceTo(72_000_000);

        // 12 of 480 cm3/min at 100 bar: 2.5 bar, half of what a piston needs.
        Assert.Equal(2.5 * Plants.Bar, system.LinePressurePa, 1.0);
        Assert.Equal(strokes, system.TotalStrokes);
        Assert.Equal(DividerState.Idle, system.Status.State);
    }

    [Fact]
    public void A_relief_valve_stuck_open_below_the_need_sends_everything_back()
    {
        LubricationSystem system = Plant.Running();
        system.AdvanceTo(10_000_000);
        system.ApplyFault(ValveFaults.ReliefStuckOpen, value: 2 * Plants.Bar);
        system.AdvanceTo(11_000_000);
        Assert.Equal((2 * Plants.Bar) + 20, system.LinePressurePa, 1.0);
        double content = system.ReservoirContentM3;
        double displaced = system.DisplacedM3;

        system.AdvanceTo(70_000_000);

        Assert.Equal(content, system.ReservoirContentM3, 1e-11);
        Assert.Equal(displaced, system.DisplacedM3);
        system.HealFault(ValveFaults.ReliefStuckOpen);
        system.AdvanceTo(131_000_000);
        Assert.True(system.DisplacedM3 > displaced + (11 * Plants.Cm3));
    }

    [Fact]
    public void Air_lets_the_pressure_fall_and_slows_its_rise_and_bleeding_takes_what_it_stored()
    {
        LubricationSystem system = Plant.Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(500_000);
        system.ApplyFault(LineFaults.Air, value: 1 * Plants.Cm3);

        // 70 bar held 0.1 cm3; air of 1 cm3 gives up as much at about 0.11 bar.
        Assert.InRange(system.LinePressurePa, 0.10 * Plants.Bar, 0.13 * Plants.Bar);
        system.AdvanceTo(1_500_000);
        Assert.InRange(system.LinePressurePa, 0.3 * Plants.Bar, 0.5 * Plants.Bar);

        double pressure = system.LinePressurePa;
        system.HealFault(LineFaults.Air);

        // Between its steps the pressure is drawn in straight lines.
        Assert.Equal(pressure, system.LinePressurePa, 5000.0);
        Assert.Equal(0.3 * Plants.Cm3, system.Balance().BledM3, 0.01 * Plants.Cm3);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Fact]
    public void An_emptied_reservoir_is_accounted_and_healing_refills_it()
    {
        LubricationSystem system = Plant.Running();
        system.AdvanceTo(10_000_000);
        system.ApplyFault(ReservoirFaults.Empty, value: 1 * Plants.Cm3);
        Assert.True(system.LevelLow);
        Assert.True(system.LevelEmpty);
        Assert.Equal(3e-3 - (3 * Plants.Cm3), system.Balance().RemovedM3, 1e-12);

        system.AdvanceTo(60_000_000);
        Assert.Equal(3 * Plants.Cm3, system.PumpedM3, 1e-8);

        system.HealFault(ReservoirFaults.Empty);
        Assert.Equal(3e-3, system.ReservoirContentM3);
        Assert.False(system.LevelEmpty);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Fact]
    public void Blocking_an_outlet_in_mid_stroke_stops_that_piston_where_it_is()
    {
        LubricationSystem system = Plant.Running();
        system.AdvanceTo(500_000);
        system.ApplyFault(OutletFaults.Blocked, "1R");
        double travel = system.PistonTravel(0);
        Assert.InRange(travel, 0.4, 0.6);

        system.AdvanceTo(60_000_000);
        Assert.Equal(travel, system.PistonTravel(0));
        Assert.Equal(0, system.TotalStrokes);

        system.HealFault(OutletFaults.Blocked, "1R");
        system.AdvanceTo(120_000_000);
        Assert.True(system.TotalStrokes > 50);
    }

    [Fact]
    public void Faults_of_sensors_leave_the_hydraulics_alone()
    {
        LubricationSystem sound = Plant.Running();
        LubricationSystem faulted = Plant.Running();
        foreach (Fault fault in FaultCatalogue.All.Except(FaultsByThing.OfTheHydraulics))
        {
            foreach (string part in FaultCatalogue.PartNames(fault, Plant))
                faulted.ApplyFault(fault, part);
        }

        sound.AdvanceTo(100_000_000);
        faulted.AdvanceTo(100_000_000);

        Assert.Equal(sound.PumpedM3, faulted.PumpedM3, 1e-16);
        Assert.Equal(sound.Balance().DeliveredM3, faulted.Balance().DeliveredM3, 1e-13);
        Assert.Equal(sound.TotalStrokes, faulted.TotalStrokes);
    }
}
