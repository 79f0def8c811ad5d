using System;
using LubeController.Plant.Description;
using LubeController.Plant.Pump;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>Whole cycles of a plant with a cam pump once it runs steadily, and how far two such measurements may lie apart.</summary>
internal static class SteadyCycles
{
    private const long BeginUs = 20_000_000;
    private const double Seconds = 180;

    // Of a window of whole cycles each end may lie anywhere in a stroke of the pump: one revolution more or less of the time.
    // What is left beside that is the error of the steps.
    private const double StepsPart = 2e-3;

    internal static Cycles Of(PlantDescription plant)
    {
        LubricationSystem system = plant.Running();
        system.AdvanceTo(BeginUs);
        return Cycles.Within(system, Seconds);
    }

    /// <summary>Part by which one may differ from the other and yet be the same.</summary>
    internal static double Tolerance(PlantDescription plant, Cycles one, Cycles other) =>
        StepsPart + (2 / (((CamPumpDescription)plant.Pump).SpeedRevPerS * Math.Max(1, Math.Min(one.Seconds, other.Seconds))));
}
