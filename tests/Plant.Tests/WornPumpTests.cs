using System;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Pump;
using LubeController.Plant.Tests.Proof;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>A worn element leaks back: the more, the higher the pressure and the thinner the lubricant.</summary>
public sealed class WornPumpTests
{
    private static readonly CamPumpDescription Cam = new()
    {
        PistonBoreM = 6e-3,
        StrokeM = 4e-3,
        SpeedRevPerS = 1,
        SlipM3PerSPa = 1e-15,
        FillingLoss = 0.05,
        SpeedSagPerPa = 1e-9,
    };

    private static readonly ConstantFlowPumpDescription Constant = new() { FlowM3PerS = 12 * Plants.Cm3PerMin };

    [Theory]
    [InlineData(true, 0.9, 100)]
    [InlineData(true, 0.5, 100)]
    [InlineData(true, 0.1, 100)]
    [InlineData(true, 0, 100)]
    [InlineData(true, 0.5, 25)]
    [InlineData(false, 0.25, 100)]
    [InlineData(false, 0.6, 40)]
    public void The_stated_part_of_a_new_ones_delivery_remains_at_the_stated_pressure(bool cam, double remaining, double atBar)
    {
        PumpDescription pump = cam ? Cam : Constant;
        double sound = DeliveredM3(pump, atBar, remaining: 1, atBar);

        Assert.True(sound > 0);
        Assert.Equal(remaining, DeliveredM3(pump, atBar, remaining, atBar) / sound, 2e-3);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Without_pressure_nothing_is_lost_and_the_more_pressure_the_more(bool cam)
    {
        PumpDescription pump = cam ? Cam : Constant;
        double before = 1 + 1e-3;
        foreach (double bar in (double[])[0.05, 20, 50, 100, 150])
        {
            double left = DeliveredM3(pump, bar, 0.5, 100) / DeliveredM3(pump, bar, 1, 100);
            Assert.InRange(left, 0, before - (bar < 1 ? 0 : 0.05));
            if (bar < 1)
                Assert.InRange(left, 0.998, 1.001);
            before = left;
        }
    }

    [Fact]
    public void Thinner_lubricant_leaks_back_more()
    {
        LubricantDescription oil = ProofLubricants.Oil;
        double Left(double temperatureK) =>
            DeliveredM3(Constant, 60, 0.5, 100, oil, temperatureK) / DeliveredM3(Constant, 60, 1, 100, oil, temperatureK);
        double ratio = new LubricationSystem(Plants.Twin(3) with { Lubricant = oil, TemperatureK = 323.15 }, 1).ViscosityRatio;

        Assert.InRange(ratio, 0.4, 0.8);
        Assert.Equal(0.7, Left(313.15), 2e-3);
        Assert.Equal(1 - (0.3 / ratio), Left(323.15), 2e-3);
        Assert.InRange(Left(283.15), 0.9, 1);
    }

    [Fact]
    public void Healing_brings_back_the_new_elements_delivery()
    {
        LubricationSystem system = (Plants.Twin(3) with { Pump = Constant }).Running();
        double sound = system.PumpFlowM3PerS;
        system.AdvanceTo(5_000_000);
        system.ApplyFault(PumpFaults.Worn, value: 0.1, second: 10 * Plants.Bar);
        Assert.True(system.PumpFlowM3PerS < 0.99 * sound);
        system.HealFault(PumpFaults.Worn);
        Assert.Equal(sound, system.PumpFlowM3PerS, 1e-18);
    }

    // The line is held at a pressure by its relief valve; what the pump brings in 50 s, m3.
    private static double DeliveredM3(PumpDescription pump, double bar, double remaining, double atBar, LubricantDescription? lubricant = null, double temperatureK = 293.15)
    {
        PlantDescription plant = Plants.Twin(3) with
        {
            Pump = pump with { StallPressurePa = 1000 * Plants.Bar },
            Relief = new ReliefDescription { OpeningPressurePa = Math.Max(bar, 0.1) * Plants.Bar, RatedFlowM3PerS = 1e-2 },
            TemperatureK = temperatureK,
        };
        LubricationSystem system = (plant with { Lubricant = lubricant ?? plant.Lubricant }).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(60_000_000);
        system.ApplyFault(PumpFaults.Worn, value: remaining, second: atBar * Plants.Bar);
        double before = system.PumpedM3;
        system.AdvanceTo(110_000_000);
        return system.PumpedM3 - before;
    }
}
