using System;
using LubeController.Plant.Description;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>Gates on counts: events and bytes. What they cost in time is measured elsewhere.</summary>
public sealed class CostTests
{
    private const long DayUs = 86_400_000_000;

    // Six points, three twin sections of 0.2 cm3, one cam pump of 2.26 cm3/min: a dose of one full cycle every 5 minutes.
    private static readonly PlantDescription SixPoint = Plants.Twin(3)
        .WithSwitch(new CycleSwitchDescription { Name = "s", Section = "3" })
        with
    {
        Pump = new CamPumpDescription { PistonBoreM = 6e-3, StrokeM = 4e-3, SpeedRevPerS = 1.0 / 3 },
        PressureSwitch = new PressureSwitchDescription { TripPa = 100 * Plants.Bar, ResetPa = 50 * Plants.Bar },
    };

    [Fact]
    public void A_day_of_the_six_point_plant_takes_few_events()
    {
        var system = new LubricationSystem(SixPoint, 1);
        for (int dose = 0; dose < 288; dose++)
        {
            Dose(system);
            system.AdvanceTo((dose + 1) * (DayUs / 288));
        }

        // Per dose 6 strokes, 2 switch changes, and 9 flow changes for each of about 11 cam revolutions; each of these may
        // cost a step to land on and one to leave.
        Assert.Equal(288 * 6, system.TotalStrokes, 6.0);
        Assert.InRange(system.EventCount, 288 * 80, 288 * 260);
        Assert.InRange(system.TryCount, system.EventCount, 3 * system.EventCount);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-13);
    }

    [Fact]
    public void Half_a_million_small_additions_still_balance()
    {
        LubricationSystem system = (SixPoint with { Pump = (CamPumpDescription)SixPoint.Pump with { SpeedRevPerS = 100 } }).Running();
        system.AdvanceTo(600_000_000);

        Assert.True(system.EventCount > 500_000);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-13);
    }

    [Fact]
    public void At_rest_nothing_is_scheduled()
    {
        var system = new LubricationSystem(SixPoint, 1);
        Dose(system);
        long before = system.EventCount;
        system.Exhaust(system.NowUs + 60_000_000);
        long events = system.EventCount;

        Assert.InRange(events - before, 1, 100);
        Assert.Equal(long.MaxValue, system.NextEventUs);
        system.AdvanceTo(system.NowUs + DayUs);
        Assert.Equal(events, system.EventCount);
    }

    [Fact]
    public void Nothing_is_allocated_once_the_plant_runs()
    {
        LubricationSystem system = SixPoint.Running();
        var observer = new Counting();
        system.Observer = observer;
        system.ApplyFault(CycleSwitchFaults.Chattering, "s");
        Run(system, DayUs / 24);
        long eventsBefore = system.EventCount;

        long before = GC.GetAllocatedBytesForCurrentThread();
        Run(system, DayUs / 6);
        long after = GC.GetAllocatedBytesForCurrentThread();

        Assert.Equal(0, after - before);
        Assert.True(system.EventCount > eventsBefore + 20_000);
        Assert.True(observer.Events > 20_000);
    }

    private static void Run(LubricationSystem system, long untilUs)
    {
        while (system.NowUs < untilUs)
        {
            system.AdvanceTo(Math.Min(untilUs, system.NextEventUs));
            system.SetPumpContact(system.NowUs % 1000 != 0);
            if (system.Status.State == DividerState.HydraulicallyLocked || system.Balance().RelativeError > 1e-9)
                throw new InvalidOperationException("The plant under measurement is not the one that was meant.");
        }
    }

    private static void Dose(LubricationSystem system)
    {
        long end = system.TripCrossings(0) + 1;
        system.SetPumpContact(true);
        while (system.TripCrossings(0) < end)
        {
            Assert.NotEqual(long.MaxValue, system.NextEventUs);
            system.AdvanceTo(system.NextEventUs);
        }

        system.SetPumpContact(false);
    }

    private sealed class Counting : IPlantObserver
    {
        internal long Events { get; private set; }

        public void OnEvent(LubricationSystem system, long timeUs, in PlantChange change) => Events++;
    }
}
