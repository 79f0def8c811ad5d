using System;
using LubeController.Plant.Checking;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>A motor has so much torque and no more: speed is supply less sag, and against too much it stands.</summary>
public sealed class MotorTests
{
    private const double ReliefPa = 200 * Plants.Bar;

    private const double StallPa = 2.5 * ReliefPa;

    private static readonly CamPumpDescription Cam = new() { PistonBoreM = 6e-3, StrokeM = 4e-3, SpeedRevPerS = 1 };

    private static PlantDescription CamPlant => Plants.Twin(3) with { Pump = Cam };

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void With_the_relief_valve_stuck_closed_a_blocked_line_ends_in_a_motor_that_stands(bool cam)
    {
        LubricationSystem system = (cam ? CamPlant : Plants.Twin(3)).Running();
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(600_000_000);

        Assert.Equal(StallPa, system.LinePressurePa, 10.0);
        Assert.False(system.MotorTurns);
        Assert.Equal(0, system.PumpFlowM3PerS);
        long steps = system.StepCount;
        double pumped = system.PumpedM3;
        long revolutions = system.PumpRevolutions;

        system.AdvanceTo(86_400_000_000);

        Assert.InRange(system.StepCount - steps, 0, 100);
        Assert.Equal((pumped, revolutions), (system.PumpedM3, system.PumpRevolutions));
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Theory]
    [InlineData(1, 0, 500)]
    [InlineData(0.6, 0, 300)]
    [InlineData(1.2, 0, 600)]
    [InlineData(0.6, 0.2, 290)]
    [InlineData(1, 0.2, 490)]
    [InlineData(1, 0.02, 500)]
    public void A_low_supply_costs_torque_in_proportion(double supply, double sagPercentPerBar, double expectedBar)
    {
        LubricationSystem system = (CamPlant with { Pump = Cam with { SpeedSagPerPa = sagPercentPerBar * 1e-7 } }).Running();
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.ApplyFault(PumpFaults.MotorSupplyLow, value: supply);
        system.AdvanceTo(600_000_000);

        Assert.Equal(expectedBar, system.LinePressurePa / Plants.Bar, 1e-4);
        Assert.False(system.MotorTurns);
    }

    [Fact]
    public void A_plant_may_name_the_pressure_that_stalls_its_motor_even_below_the_relief_valves()
    {
        LubricationSystem system = (CamPlant with { Pump = Cam with { StallPressurePa = 120 * Plants.Bar } }).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(600_000_000);

        Assert.Equal(120, system.LinePressurePa / Plants.Bar, 1e-4);
        Assert.Equal(0, system.RelievedM3);
    }

    // The line holds 200 bar behind the relief valve; half of each turn is loaded by it: 0.5/U + 0.5/(U - sag p).
    [Theory]
    [InlineData(1, 0.1)]
    [InlineData(0.7, 0.1)]
    [InlineData(0.5, 0.1)]
    [InlineData(1, 0.02)]
    public void Speed_is_supply_less_sag_while_it_delivers_and_supply_while_it_fills(double supply, double sagPercentPerBar)
    {
        double sagPerPa = sagPercentPerBar * 1e-7;
        LubricationSystem system = (CamPlant with { Pump = Cam with { SpeedSagPerPa = sagPerPa } }).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.ApplyFault(PumpFaults.MotorSupplyLow, value: supply);
        system.AdvanceTo(60_000_000);
        double before = system.PumpRevolutions + system.CamAngle;
        Assert.Equal(ReliefPa, system.LinePressurePa, 2e3);

        system.AdvanceTo(360_000_000);

        double secondsPerTurn = (0.5 / supply) + (0.5 / (supply - (sagPerPa * ReliefPa)));
        Assert.Equal(300 / secondsPerTurn, system.PumpRevolutions + system.CamAngle - before, 0.3);
    }

    [Fact]
    public void A_stalled_motor_starts_when_the_pressure_has_fallen_and_stalls_again()
    {
        LubricationSystem system = CamPlant.Running();
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.ApplyFault(ValveFaults.CheckValveLeaking, value: 1e-16);
        system.AdvanceTo(60_000_000);
        long steps = system.StepCount;
        int starts = 0;
        bool turned = system.MotorTurns;
        double highest = 0, lowest = double.MaxValue;
        while (system.NowUs < 660_000_000)
        {
            system.AdvanceTo(system.NowUs + 10_000);
            starts += system.MotorTurns && !turned ? 1 : 0;
            turned = system.MotorTurns;
            highest = Math.Max(highest, system.LinePressurePa);
            lowest = Math.Min(lowest, system.LinePressurePa);
        }

        Assert.Equal(StallPa, highest, 100.0);
        Assert.Equal(0.9 * StallPa, lowest, 0.01 * StallPa);
        Assert.InRange(starts, 5, 500);
        Assert.InRange(system.StepCount - steps, starts, 100 * starts);

        system.HealFault(DividerFaults.InletBlocked);
        system.AdvanceTo(720_000_000);
        Assert.True(system.MotorTurns);
        Assert.True(system.LinePressurePa < 50 * Plants.Bar);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Fact]
    public void A_motor_that_stands_does_not_start_against_what_stalled_it()
    {
        LubricationSystem system = CamPlant.Running();
        system.ApplyFault(ValveFaults.ReliefStuckClosed);
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(600_000_000);
        system.SetPumpContact(false);
        system.AdvanceTo(700_000_000);

        system.SetPumpContact(true);
        Assert.False(system.MotorTurns);

        system.ApplyFault(PumpFaults.MotorSupplyLow, value: 1.2);
        system.AdvanceTo(701_000_000);
        Assert.True(system.MotorTurns);
    }

    // 60 cm3/min into 5 cm3 of stiff line with a leak that takes nearly all of it: without the time to start again it would
    // stall and start a thousand times a second.
    [Fact]
    public void A_motor_against_a_load_just_beyond_it_stalls_and_starts_a_few_times_a_second_at_most()
    {
        LubricationSystem system = (Plants.Twin(3) with
        {
            Pump = new ConstantFlowPumpDescription { FlowM3PerS = 60 * Plants.Cm3PerMin, StallPressurePa = 25 * Plants.Bar },
            Line = new LineDescription { VolumeM3 = 5 * Plants.Cm3, BulkModulusPa = 1.8e9 },
        }).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.ApplyFault(LineFaults.Leak, value: 230 * Plants.Cm3PerMin);
        system.AdvanceTo(60_000_000);

        Assert.InRange(system.StepCount, 60, 60 * 200);
        Assert.True(system.LeakedM3 > 1 * Plants.Cm3);
        Assert.InRange(system.Balance().RelativeError, 0, 1e-12);
    }

    [Fact]
    public void Next_to_no_supply_turns_nothing()
    {
        LubricationSystem system = CamPlant.Running();
        system.ApplyFault(PumpFaults.MotorSupplyLow, value: 0.02);
        Assert.False(system.MotorTurns);
        system.AdvanceTo(600_000_000);
        Assert.Equal(0, system.PumpedM3);
    }

    [Fact]
    public void A_stall_pressure_below_the_relief_valves_is_warned_of_and_one_out_of_range_refused()
    {
        Assert.Empty(PlantCheck.Of(CamPlant with { Pump = Cam with { StallPressurePa = 201 * Plants.Bar } }));
        PlantFinding unusual = Assert.Single(PlantCheck.Of(CamPlant with { Pump = Cam with { StallPressurePa = ReliefPa } }));
        Assert.Equal((false, "pump.stall-pressure"), (unusual.IsRefusal, unusual.Path));
        Assert.Single(PlantCheck.Refusals(CamPlant with { Pump = Cam with { StallPressurePa = 2e9 } }));
        Assert.Single(PlantCheck.Refusals(Plants.Twin(3) with { Pump = new ConstantFlowPumpDescription { FlowM3PerS = 1e-7, StallPressurePa = double.NaN } }));
    }
}
