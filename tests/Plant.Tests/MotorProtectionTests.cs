using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>The overload relay of the pump's motor: what trips it, what it does and when it resets.</summary>
public sealed class MotorProtectionTests
{
    private static PlantDescription Protected()
    {
        PlantDescription plant = Plants.Twin(3);
        return plant with { Pump = plant.Pump with { OverloadTripS = 5, OverloadCoolS = 20 } };
    }

    [Fact]
    public void A_seized_pump_trips_it_after_its_time_and_it_resets_when_cool()
    {
        var system = new LubricationSystem(Protected(), 1);
        system.ApplyFault(PumpFaults.Seized);
        system.SetPumpContact(true);
        Assert.False(system.MotorTurns);
        system.AdvanceTo(4_999_999);
        Assert.False(system.OverloadTripped);
        system.AdvanceTo(5_000_000);
        Assert.True(system.OverloadTripped);

        // Tripped it draws no current, cools for its time, and trips again.
        system.AdvanceTo(24_999_999);
        Assert.True(system.OverloadTripped);
        system.AdvanceTo(25_000_000);
        Assert.False(system.OverloadTripped);
        system.AdvanceTo(30_000_000);
        Assert.True(system.OverloadTripped);
    }

    [Fact]
    public void Half_warm_it_trips_in_half_the_time_and_cools_between()
    {
        var system = new LubricationSystem(Protected(), 1);
        system.ApplyFault(PumpFaults.Seized);
        system.SetPumpContact(true);
        system.AdvanceTo(4_000_000);
        system.SetPumpContact(false);

        // Four fifths warm; in ten seconds half of the whole cools away: three tenths are left.
        system.AdvanceTo(14_000_000);
        system.SetPumpContact(true);
        system.AdvanceTo(17_499_999);
        Assert.False(system.OverloadTripped);
        system.AdvanceTo(17_500_001);
        Assert.True(system.OverloadTripped);
    }

    [Fact]
    public void A_motor_that_turns_never_trips_it_and_one_stalled_by_pressure_does()
    {
        LubricationSystem system = Protected().Running();
        system.AdvanceTo(600_000_000);
        Assert.False(system.OverloadTripped);
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(1_200_000_000);
        long tripped = 0;
        for (long at = 1_200_000_000; at < 1_300_000_000; at += 1_000_000)
        {
            system.AdvanceTo(at);
            tripped += system.OverloadTripped ? 1 : 0;
        }

        // It trips and resets in turns: five seconds of standing, twenty of cooling.
        Assert.InRange(tripped, 60, 95);
    }

    [Fact]
    public void Without_one_nothing_trips()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);
        system.ApplyFault(PumpFaults.Seized);
        system.SetPumpContact(true);
        system.AdvanceTo(600_000_000);
        Assert.False(system.OverloadTripped);
        Assert.Equal(0, system.PumpedM3);
        system.HealFault(PumpFaults.Seized);
        system.AdvanceTo(700_000_000);
        Assert.True(system.PumpedM3 > 0);
    }

    [Fact]
    public void Times_out_of_range_are_refused()
    {
        PlantDescription plant = Plants.Twin(3);
        Assert.Contains(PlantCheck.Refusals(plant with { Pump = plant.Pump with { OverloadTripS = 0 } }), finding => finding.Path == "pump.overload-trip-time");
        Assert.Contains(PlantCheck.Refusals(plant with { Pump = plant.Pump with { OverloadCoolS = 0 } }), finding => finding.Path == "pump.overload-cool-time");
    }
}
