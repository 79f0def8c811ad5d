using System.Collections.Generic;
using System.Linq;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>Plain plants that the checks of the hydraulics change with <c>with</c>.</summary>
internal static class HandbookPlants
{
    internal const double Cm3 = 1e-6;

    internal const double Cm3PerMin = 1e-6 / 60;

    internal const double Bar = 1e5;

    internal static PlantDescription Of(double flowCm3PerMin, IReadOnlyList<double> strokesCm3, string singles = "", double breakawayBar = 5)
    {
        var divider = new DividerDescription
        {
            Sections =
            [
                .. strokesCm3.Select((volume, i) => new SectionDescription
                {
                    Name = $"{i + 1}",
                    VolumePerStrokeM3 = volume * Cm3,
                    BreakawayPa = breakawayBar * Bar,
                    Outlets = i < singles.Length && singles[i] == 's' ? SectionOutlets.Single : SectionOutlets.Twin,
                }),
            ],
        };
        return new PlantDescription
        {
            Name = "handbook",
            Lubricant = Lubricants.NewtonianOil(0.1),
            Reservoir = new ReservoirDescription { CapacityM3 = 1, ContentM3 = 1, LowLevelM3 = 0.1, EmptyLevelM3 = 0.01 },
            Pump = new ConstantFlowPumpDescription { FlowM3PerS = flowCm3PerMin * Cm3PerMin },
            Line = new LineDescription { VolumeM3 = 20 * Cm3, BulkModulusPa = 1.4e9 },
            Relief = new ReliefDescription { OpeningPressurePa = 250 * Bar },
            Divider = divider,
            Outlets = PortGroups.DefaultOutlets(divider),
        };
    }

    internal static PlantDescription BackPressure(this PlantDescription plant, string outlet, double bar) =>
        plant with { Outlets = [.. plant.Outlets.Select(point => point.Name == outlet ? point with { BackPressurePa = bar * Bar } : point)] };

    internal static LubricationSystem Running(this PlantDescription plant)
    {
        var system = new LubricationSystem(plant, 1);
        system.SetPumpContact(true);
        return system;
    }

    internal static void AfterStrokes(this LubricationSystem system, long strokes)
    {
        while (system.TotalStrokes < strokes)
            system.Step();
    }

    internal static void Step(this LubricationSystem system)
    {
        Assert.NotEqual(long.MaxValue, system.NextEventUs);
        system.AdvanceTo(system.NextEventUs);
    }
}
