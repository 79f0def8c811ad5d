using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Tests.Support.Fluids;

namespace LubeController.Emulator.Tests;

/// <summary>A small plant, all of it invented: thin oil, a pump of 12 cm3/min, a stiff short line, a switch called watch on the second section.</summary>
internal static class SmallPlant
{
    /// <summary>The plant around a divider that has a section called 2.</summary>
    public static PlantDescription With(DividerDescription divider) => new()
    {
        Name = "small plant",
        Lubricant = Lubricants.NewtonianOil(0.1),
        Reservoir = new ReservoirDescription { CapacityM3 = 4e-3, ContentM3 = 3e-3, LowLevelM3 = 1e-3, EmptyLevelM3 = 2e-4 },
        Pump = new ConstantFlowPumpDescription { FlowM3PerS = 12e-6 / 60 },
        Line = new LineDescription { VolumeM3 = 2e-5, BulkModulusPa = 1.4e9 },
        Relief = new ReliefDescription { OpeningPressurePa = 2e7 },
        Divider = divider,
        Outlets = PortGroups.DefaultOutlets(divider),
        CycleSwitches = [new CycleSwitchDescription { Name = "watch", Section = "2" }],
    };
}
