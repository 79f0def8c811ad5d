using System;
using LubeController.Plant.Description;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class PumpTests
{
    private const double DisplacementM3 = Math.PI / 4 * 6e-3 * 6e-3 * 4e-3 * 0.9;

    private static readonly CamPumpDescription Cam = new()
    {
        PistonBoreM = 6e-3,
        StrokeM = 4e-3,
        SpeedRevPerS = 20.0 / 60,
        VolumetricEfficiency = 0.9,
    };

    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(64)]
    public void A_cam_delivers_its_displacement_in_the_first_half_of_each_revolution_and_nothing_in_the_second(int segments)
    {
        LubricationSystem system = (Plants.Twin(3) with { Pump = Cam with { DeliverySegments = segments } }).Running();

        system.AdvanceTo(1_500_001);
        Assert.Equal(DisplacementM3, system.PumpedM3, DisplacementM3 * 1e-12);
        Assert.Equal(0, system.PumpFlowM3PerS);
        system.AdvanceTo(2_999_999);
        Assert.Equal(DisplacementM3, system.PumpedM3, DisplacementM3 * 1e-12);

        system.AdvanceTo(300_000_000);
        Assert.Equal(100 * DisplacementM3, system.PumpedM3, 100 * DisplacementM3 * 1e-12);
        Assert.Equal(100, system.PumpRevolutions);
    }

    [Fact]
    public void Flow_follows_the_sine_of_the_cam_angle()
    {
        LubricationSystem system = (Plants.Twin(3) with { Pump = Cam }).Running();

        // A quarter of the delivery half is past at pi/4: lift (1 - cos(pi/4))/2.
        system.AdvanceTo(375_000);
        Assert.Equal(DisplacementM3 * (1 - Math.Cos(Math.PI / 4)) / 2, system.PumpedM3, DisplacementM3 * 1e-9);
        system.AdvanceTo(750_000);
        Assert.Equal(DisplacementM3 / 2, system.PumpedM3, DisplacementM3 * 1e-9);
    }

    [Fact]
    public void The_cam_keeps_its_place_while_the_motor_stands()
    {
        LubricationSystem system = (Plants.Twin(3) with { Pump = Cam }).Running();
        system.AdvanceTo(600_000);
        system.SetPumpContact(false);
        system.AdvanceTo(90_000_000);
        Assert.Equal(0.2, system.CamAngle, 12);
        double pumped = system.PumpedM3;

        system.SetPumpContact(true);
        system.AdvanceTo(90_900_000);

        Assert.Equal(0.5, system.CamAngle, 9);
        Assert.Equal(DisplacementM3, system.PumpedM3, DisplacementM3 * 1e-9);
        Assert.InRange(pumped, 0.3 * DisplacementM3, 0.4 * DisplacementM3);
    }

    [Fact]
    public void A_cam_may_start_anywhere()
    {
        LubricationSystem system = (Plants.Twin(3) with { Pump = Cam with { InitialAngle = 0.75 } }).Running();
        Assert.Equal(0.75, system.CamAngle, 12);
        system.AdvanceTo(750_000);
        Assert.Equal(0, system.PumpedM3);
        system.AdvanceTo(2_250_010);
        Assert.Equal(DisplacementM3, system.PumpedM3, DisplacementM3 * 1e-9);
    }

    [Fact]
    public void A_pump_without_lubricant_draws_air_and_delivers_little_of_it()
    {
        PlantDescription plant = Plants.Twin(3);
        LubricationSystem system = (plant with { Reservoir = plant.Reservoir with { ContentM3 = 1 * Plants.Cm3 } }).Running();

        system.AdvanceTo(5_000_000);
        Assert.Equal(0, system.ReservoirContentM3, 1e-8);
        Assert.InRange(system.LineAirM3, 0, 1e-8);
        double soundStrokes = system.TotalStrokes / 5.0;
        system.AdvanceTo(600_000_000);

        // All of it, and hardly more: what the relief valve and the last drops give back is pumped again.
        Assert.Equal(1 * Plants.Cm3, system.PumpedM3, 1e-8);
        Assert.True(system.LineAirM3 > 1 * Plants.Cm3);
        Assert.True(system.MotorTurns);
        Assert.InRange(system.TotalStrokes / 600.0, 0.01, soundStrokes / 2);

        system.Refill(2e-3);
        system.AdvanceTo(605_000_000);
        Assert.Equal(2 * Plants.Cm3, system.PumpedM3, 2e-8);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Fact]
    public void A_dead_motor_and_a_blocked_suction_each_cost_their_flow()
    {
        LubricationSystem system = Plants.Twin(3).Running();
        double sound = system.PumpFlowM3PerS;

        system.ApplyFault(PumpFaults.SuctionBlocked);
        Assert.Equal(0, system.PumpFlowM3PerS);
        Assert.True(system.MotorTurns);
        system.HealAllFaults();

        system.ApplyFault(PumpFaults.Off);
        Assert.Equal(0, system.PumpFlowM3PerS);
        Assert.False(system.MotorTurns);
        system.HealAllFaults();
        Assert.Equal(sound, system.PumpFlowM3PerS, 1e-18);
    }

    [Fact]
    public void A_welded_contact_runs_the_motor_whatever_it_is_told()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);
        system.ApplyFault(PumpFaults.ContactWelded);

        system.AdvanceTo(10_000_000);

        Assert.False(system.PumpContact);
        Assert.True(system.MotorTurns);
        Assert.Equal(2 * Plants.Cm3, system.PumpedM3, 1e-12);
        system.HealFault(PumpFaults.ContactWelded);
        Assert.False(system.MotorTurns);
    }
}
