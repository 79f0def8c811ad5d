using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Tests.Support.Fluids;

namespace LubeController.Plant.Tests;

/// <summary>Invented plants, small and plain, that tests change with <c>with</c>.</summary>
internal static class Plants
{
    internal const double Cm3 = 1e-6;

    internal const double Cm3PerMin = 1e-6 / 60;

    internal const double Bar = 1e5;

    internal static SectionDescription Section(int number, double strokeM3 = 0.2 * Cm3, SectionOutlets outlets = SectionOutlets.Twin) => new()
    {
        Name = number.ToString(System.Globalization.CultureInfo.InvariantCulture),
        VolumePerStrokeM3 = strokeM3,
        Outlets = outlets,
    };

    internal static PlantDescription With(DividerDescription divider, PumpDescription? pump = null) => new()
    {
        Name = "bench",
        Lubricant = Lubricants.NewtonianOil(0.1),
        Reservoir = new ReservoirDescription { CapacityM3 = 4e-3, ContentM3 = 3e-3, LowLevelM3 = 1e-3, EmptyLevelM3 = 2e-4 },
        Pump = pump ?? new ConstantFlowPumpDescription { FlowM3PerS = 12 * Cm3PerMin },
        Line = new LineDescription { VolumeM3 = 20 * Cm3, BulkModulusPa = 1.4e9 },
        Relief = new ReliefDescription { OpeningPressurePa = 200 * Bar },
        Divider = divider,
        Outlets = PortGroups.DefaultOutlets(divider),
    };

    internal static PlantDescription Twin(int sections, double strokeM3 = 0.2 * Cm3) =>
        With(new DividerDescription { Sections = [.. Enumerable.Range(1, sections).Select(i => Section(i, strokeM3))] });

    internal static PlantDescription Of(params SectionDescription[] sections) => With(new DividerDescription { Sections = sections });

    /// <summary>Two injectors on one line, discharging at 30 bar and recharging below 10; the vent valve is open without power.</summary>
    internal static PlantDescription SingleLine() => With(DividerDescription.None) with
    {
        Outlets = [new OutletDescription { Name = "a", Ports = [] }, new OutletDescription { Name = "b", Ports = [], BackPressurePa = 5 * Bar }],
        Injectors =
        [
            new InjectorDescription { Name = "ia", Outlet = "a", VolumeM3 = 0.1 * Cm3, DischargePa = 30 * Bar, RechargePa = 10 * Bar },
            new InjectorDescription { Name = "ib", Outlet = "b", VolumeM3 = 0.2 * Cm3, DischargePa = 30 * Bar, RechargePa = 10 * Bar },
        ],
        VentValve = new VentValveDescription(),
    };

    internal static PlantDescription Starting(this PlantDescription plant, params double[] travels) => plant with
    {
        Divider = plant.Divider with
        {
            Sections = [.. plant.Divider.Sections.Select((s, i) => s with { InitialTravel = travels[i] })],
        },
    };

    internal static PlantDescription WithSwitch(this PlantDescription plant, CycleSwitchDescription cycle) =>
        plant with { CycleSwitches = [.. plant.CycleSwitches, cycle] };

    internal static LubricationSystem Running(this PlantDescription plant, ulong seed = 1)
    {
        var system = new LubricationSystem(plant, seed);
        system.SetPumpContact(true);
        return system;
    }

    /// <summary>Advances event by event until nothing is scheduled any more or the time is reached.</summary>
    internal static void Exhaust(this LubricationSystem system, long untilUs)
    {
        while (system.NextEventUs <= untilUs)
            system.AdvanceTo(system.NextEventUs);
    }

    /// <summary>The strokes of a run in order, each as section and side, for instance <c>2L</c>.</summary>
    internal static List<string> StrokesInOrder(this LubricationSystem system, int count, int mostEvents = 100_000)
    {
        var order = new List<string>();
        long[] before = Counts(system);
        while (order.Count < count && mostEvents-- > 0 && system.NextEventUs != long.MaxValue)
        {
            system.AdvanceTo(system.NextEventUs);
            long[] now = Counts(system);
            for (int port = 0; port < now.Length; port++)
            {
                if (now[port] > before[port])
                    order.Add(PortName(system, port));
            }

            before = now;
        }

        return order;
    }

    /// <summary>Names of the 2N strokes in ring order, 1L 2L … NL 1R 2R … NR.</summary>
    internal static string PortName(LubricationSystem system, int port) =>
        system.Description.Divider.Sections[port % system.SectionCount].Name + (port < system.SectionCount ? "L" : "R");

    private static long[] Counts(LubricationSystem system)
    {
        int n = system.SectionCount;
        var counts = new long[2 * n];
        for (int i = 0; i < n; i++)
        {
            counts[i] = system.Strokes(i, Side.L);
            counts[i + n] = system.Strokes(i, Side.R);
        }

        return counts;
    }
}
