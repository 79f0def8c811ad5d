using System;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Pump;
using Xunit;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>Cycle time goes with the pump's speed as long as its efficiency does not change.</summary>
[Trait("Run", "Long")]
public sealed class PumpSpeedTests
{
    private const int Revolutions = 150;

    // Over whole revolutions pistons move what the pump brought, but for what line and outlet lines hold more or less at the
    // two ends of the window: at most the compliance times the swing of pressure.
    private const double StepsPart = 5e-4;

    [Fact]
    public void Doubling_the_pump_s_speed_halves_the_cycle_time_averaged_over_whole_strokes() =>
        TightPlants.WithCam.Sample(
            plant =>
            {
                var cam = (CamPumpDescription)plant.Pump;
                (double cycleS, double storedPart) = Measure(plant, cam.SpeedRevPerS);
                (double fastCycleS, double fastStoredPart) = Measure(plant with { Pump = cam with { SpeedRevPerS = 2 * cam.SpeedRevPerS } }, 2 * cam.SpeedRevPerS);

                Assert.Equal(2, cycleS / fastCycleS, 2 * (StepsPart + storedPart + fastStoredPart));
            },
            iter: 50);

    private static (double CycleS, double StoredPart) Measure(PlantDescription plant, double speedRevPerS)
    {
        LubricationSystem system = plant.Running();
        To(system, 20 / speedRevPerS);
        double displaced = system.DisplacedM3;
        double low = system.LinePressurePa;
        double high = low;
        for (int revolution = 1; revolution <= Revolutions; revolution++)
        {
            To(system, (20 + revolution) / speedRevPerS);
            low = Math.Min(low, system.LinePressurePa);
            high = Math.Max(high, system.LinePressurePa);
        }

        Assert.Equal(0, system.RelievedM3);
        double moved = system.DisplacedM3 - displaced;
        return (Revolutions / speedRevPerS / (moved / system.FullCycleVolumeM3), (high - low) * TightPlants.ComplianceM3PerPa(plant) / moved);
    }

    private static void To(LubricationSystem system, double seconds) => system.AdvanceTo((long)Math.Round(seconds * 1e6));
}
