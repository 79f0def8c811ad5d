using System;
using System.Threading;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>More back-pressure at a point never delivers more.</summary>
[Trait("Run", "Long")]
public sealed class BackPressureTests(ITestOutputHelper output)
{
    private const double Bar = 1e5;

    [Fact]
    public void With_tight_pistons_more_back_pressure_at_one_point_delivers_no_more_to_any_and_no_more_in_all() =>
        Sample(bypass: 0, (less, more, outlet, tolerance) =>
        {
            for (int any = 0; any < less.VolumesM3.Length; any++)
                Assert.InRange(more.FlowM3PerS(any), 0, less.FlowM3PerS(any) * (1 + tolerance));
            Assert.InRange(more.TotalFlowM3PerS, 0, less.TotalFlowM3PerS * (1 + tolerance));
        });

    // What leaks past worn pistons, half of all in these plants, is shared out anew with the times for which each side is open:
    // single points may get a little more, all together do not.
    [Fact]
    public void With_worn_pistons_more_back_pressure_at_one_point_delivers_no_more_in_all() =>
        Sample(bypass: 2e-15, (less, more, outlet, tolerance) =>
            Assert.InRange(more.TotalFlowM3PerS, 0, less.TotalFlowM3PerS * (1 + tolerance)));

    private void Sample(double bypass, Action<Cycles, Cycles, int, double> hold)
    {
        int compared = 0;
        int fell = 0;
        Gen.Select(TightPlants.WithCam, Gen.Double[1, 120], Gen.Int[0, 11], Gen.Double[60, 250], Gen.Double[0, 1]).Sample(
            (tight, addedBar, which, reliefBar, slip) =>
            {
                PlantDescription plant = Scenarios.Sections(tight, section => section with { BypassM3PerSPa = bypass }) with
                {
                    Pump = (CamPumpDescription)tight.Pump with { SlipM3PerSPa = slip < 0.5 ? 0 : slip * 1e-14, SpeedSagPerPa = slip > 0.8 ? 1e-8 : 0 },
                    Relief = new ReliefDescription { OpeningPressurePa = reliefBar * Bar, OverridePa = 10 * Bar },
                };
                int outlet = which % plant.Outlets.Count;
                Cycles less = SteadyCycles.Of(plant);
                Cycles more = SteadyCycles.Of(Scenarios.Outlet(plant, outlet, point => point with { BackPressurePa = point.BackPressurePa + (addedBar * Bar) }));
                if (less.Count == 0)
                    return;
                double tolerance = SteadyCycles.Tolerance(plant, less, more);
                hold(less, more, outlet, tolerance);
                Interlocked.Increment(ref compared);
                if (more.TotalFlowM3PerS < less.TotalFlowM3PerS * (1 - tolerance))
                    Interlocked.Increment(ref fell);
            },
            iter: 50);
        output.WriteLine($"{compared} compared, in {fell} of them less was delivered");
        // Fewer than one in eight is drawn now and then; hardly any would mean that nothing was compared.
        Assert.True(compared > 30 && fell > 2, "Hardly any back-pressure made a difference.");
    }
}
