using System.Linq;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>
/// Between two strokes the divider stands: a piston has arrived, and the next does not start before the pump has pressed the
/// line from what the last one moved on to what the next breaks away at.
/// </summary>
public sealed class DwellTests
{
    private const double BulkModulusPa = 1.4e9;

    private const double FlowCm3PerMin = 12;

    /// <summary>Source: dp/dt = Q·B/V, derived; hence a dwell of (breakaway - pressure at arrival)·V/(Q·B).</summary>
    [Theory]
    [InlineData(10, 20)]
    [InlineData(20, 20)]
    [InlineData(40, 20)]
    [InlineData(20, 40)]
    [InlineData(20, 80)]
    public void Dwell_between_pistons_is_the_rise_to_breakaway_at_QB_over_V(double breakawayBar, double volumeCm3)
    {
        Dwell dwell = Measured(breakawayBar, volumeCm3);

        double risePa = (breakawayBar * HandbookPlants.Bar) - dwell.ArrivalPa;
        Assert.True(risePa > 0);
        Near.Relative(risePa * volumeCm3 * HandbookPlants.Cm3 / (FlowCm3PerMin * HandbookPlants.Cm3PerMin * BulkModulusPa), dwell.Seconds, 1e-3);
    }

    /// <summary>Derived from the same: it grows with the breakaway beyond friction, and in proportion to compliance V/B.</summary>
    [Fact]
    public void Dwell_between_pistons_grows_with_breakaway_and_compliance()
    {
        double at20 = Measured(20, 20).Seconds;

        Assert.InRange(at20, 0.05, 0.2);
        Near.Relative(2, Measured(40, 20).Seconds / Measured(20, 20).Seconds, 0.15);
        Near.Relative(2, Measured(20, 40).Seconds / at20, 0.02);
        Near.Relative(4, Measured(20, 80).Seconds / at20, 0.04);
    }

    /// <summary>Derived: a piston that slides no easier than it breaks away lets the next start at once.</summary>
    [Fact]
    public void Without_a_breakaway_beyond_friction_there_is_next_to_no_dwell() =>
        Assert.InRange(Measured(20, 20, friction: 1).Seconds, 0, 2e-3);

    // The pressure at one piston's arrival and the time from there to the next one's start, once the row has settled.
    private static Dwell Measured(double breakawayBar, double volumeCm3, double friction = 0.5)
    {
        PlantDescription plant = HandbookPlants.Of(FlowCm3PerMin, [1, 1, 1], breakawayBar: breakawayBar);
        LubricationSystem system = (plant with
        {
            Line = new LineDescription { VolumeM3 = volumeCm3 * HandbookPlants.Cm3, BulkModulusPa = BulkModulusPa },
            Divider = plant.Divider with
            {
                HalfLimitLossPa = 100,
                Sections = [.. plant.Divider.Sections.Select(section => section with { FrictionPa = friction * breakawayBar * HandbookPlants.Bar })],
            },
        }).Running();
        system.AfterStrokes(6);
        long arrivedUs = system.NowUs;
        double pressurePa = system.LinePressurePa;
        double[] stood = Travels(system);
        long startUs = arrivedUs;
        while (Stands(stood, Travels(system)))
        {
            startUs = system.NowUs;
            system.Step();
        }

        return new Dwell(pressurePa, (startUs - arrivedUs) * 1e-6);
    }

    private static double[] Travels(LubricationSystem system) => [.. Enumerable.Range(0, system.SectionCount).Select(system.PistonTravel)];

    // Events are told in whole microseconds: within one a piston that starts has hardly moved.
    private static bool Stands(double[] before, double[] now) => before.Zip(now).All(pair => System.Math.Abs(pair.First - pair.Second) < 1e-4);

    private readonly record struct Dwell(double ArrivalPa, double Seconds);
}
