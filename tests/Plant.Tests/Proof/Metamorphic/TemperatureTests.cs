using System.Threading;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>A colder plant never cycles faster, where nothing slips, passes pistons or leaks: only then warmth helps alone.</summary>
[Trait("Run", "Long")]
public sealed class TemperatureTests(ITestOutputHelper output)
{
    [Fact]
    public void Colder_never_cycles_faster_where_slip_bypass_and_leaks_are_off()
    {
        int compared = 0;
        int slower = 0;
        Gen.Select(TightPlants.WithCam, Gen.Double[2, 40], Gen.Double[0, 1], Gen.Double[60, 200]).Sample(
            (tight, colderK, filling, reliefBar) =>
            {
                PlantDescription warm = tight with
                {
                    TemperatureK = 308,
                    Pump = (CamPumpDescription)tight.Pump with { FillingLoss = filling < 0.5 ? 0 : filling * 0.1, SpeedSagPerPa = filling > 0.8 ? 1e-8 : 0 },
                    Relief = new ReliefDescription { OpeningPressurePa = reliefBar * 1e5, OverridePa = 1e6 },
                };
                Cycles inTheWarmth = SteadyCycles.Of(warm);
                Cycles inTheCold = SteadyCycles.Of(warm with { TemperatureK = warm.TemperatureK - colderK });
                if (inTheWarmth.Count == 0)
                    return;
                double tolerance = SteadyCycles.Tolerance(warm, inTheWarmth, inTheCold);
                double coldCycleS = inTheCold.Count == 0 ? double.PositiveInfinity : inTheCold.CycleS;
                Assert.True(coldCycleS >= inTheWarmth.CycleS * (1 - tolerance), $"{coldCycleS} s in the cold, {inTheWarmth.CycleS} s in the warmth");
                Interlocked.Increment(ref compared);
                if (coldCycleS > inTheWarmth.CycleS * (1 + tolerance))
                    Interlocked.Increment(ref slower);
            },
            iter: 50);
        output.WriteLine($"{compared} compared, {slower} of them slower in the cold");
        Assert.True(compared > 30 && slower > 7, "Hardly any cold made a difference.");
    }
}
