using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Tests.Proof;

/// <summary>The runs on which the steps are proved: one for each thing that bends a curve, and one of all.</summary>
internal static class Scenarios
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    internal static readonly CamPumpDescription Cam = new() { PistonBoreM = 6e-3, StrokeM = 8e-3, SpeedRevPerS = 0.8, VolumetricEfficiency = 0.9 };

    private static readonly LineSegmentDescription Tube = new() { LengthM = 5, BoreM = 6e-3, WallModulusPa = 35e9 };

    private static readonly LineSegmentDescription Hose = new() { LengthM = 1, BoreM = 6e-3, WallModulusPa = 0.5e9, Cells = 2 };

    internal static readonly ReliefDescription Relief = new() { OpeningPressurePa = 60 * Bar, OverridePa = 8 * Bar, RatedFlowM3PerS = 3e-7, ReseatPressurePa = 54 * Bar };

    internal static readonly ReservoirDescription Reservoir = new() { CapacityM3 = 4e-3, ContentM3 = 3e-3, LowLevelM3 = 1e-3, EmptyLevelM3 = 2e-4 };

    internal static IReadOnlyList<Scenario> All { get; } =
    [
        Dose("warm grease", Base(ProofLubricants.Grease, 303.15)),
        Dose("cold grease", Base(ProofLubricants.Grease, 263.15)),
        Dose("stiff grease", Base(ProofLubricants.StiffGrease, 288.15)),
        Dose("cold oil", Base(ProofLubricants.Oil, 273.15)),
        Dose("warm oil, no outlet lines", WithoutOutletLines(Base(ProofLubricants.Oil, 333.15))),
        Dose("line without loss", WithoutOutletLines(Base(ProofLubricants.Oil, 313.15) with { Line = Line() })),
        Dose("worn pistons", Sections(Base(ProofLubricants.Oil, 313.15), s => s with { BypassM3PerSPa = 3e-15 })),
        Dose("worn pistons, hot", Sections(Base(ProofLubricants.Oil, 343.15), s => s with { BypassM3PerSPa = 1e-15 })),
        Dose("worn pump", Base(ProofLubricants.Oil, 313.15) with { Pump = Cam with { SlipM3PerSPa = 1e-14, FillingLoss = 0.05, SpeedSagPerPa = 1e-8 } }),
        Dose("worn pump, cold", Base(ProofLubricants.Oil, 278.15) with { Pump = Cam with { SlipM3PerSPa = 1e-13, FillingLoss = 0.05, SpeedSagPerPa = 1e-8 } }),
        Dose("relief valve opens each cycle", Outlet(Base(ProofLubricants.Oil, 303.15), 2, o => o with { BackPressurePa = 58 * Bar }) with { Relief = Relief }),
        Dose("air", Air(1)),
        Dose("air, sudden", Air(1.4)),
        Dose("air and hose", Air(1) with { Line = Line(Tube, Hose) with { AirM3 = 1 * Cm3 } }),
        Dose("air, sudden, and hose", Air(1.4) with { Line = Line(Tube, Hose) with { AirM3 = 1 * Cm3, GasExponent = 1.4 } }),
        Dose("reservoir runs low", Air(1) with { Reservoir = Reservoir with { ContentM3 = 28 * Cm3, AeratesBelowM3 = 20 * Cm3, LowLevelM3 = 15 * Cm3, EmptyLevelM3 = 5 * Cm3 } }),
        Dose("strainer", Base(ProofLubricants.Oil, 293.15) with { Line = Line(Tube) with { StrainerLossPa = 2 * Bar } }),
        Dose("pistons that take their time", Base(ProofLubricants.Oil, 293.15, d => d with { HalfLimitLossPa = 3 * Bar, StrokeFlowLimitM3PerS = 2e-6 })),
        Dose("breakaway above friction, hose", Sections(Base(ProofLubricants.Oil, 303.15) with { Line = Line(Tube, Hose) }, s => s with { BreakawayPa = 14 * Bar, FrictionPa = 6 * Bar })),
        Dose("a high point behind a hose", Outlet(Base(ProofLubricants.Grease, 293.15) with { Line = Line(Tube, Hose) }, 1, o => o with { BackPressurePa = 90 * Bar })),
        Dose("master and two secondaries", Master()),
        Injectors(),
        Dose("all together", Everything()),
        new Scenario(
            "faults come and go",
            Base(ProofLubricants.Oil, 303.15) with { Line = Line(Tube, Hose) },
            160,
            (0, s => s.SetPumpContact(true)),
            (20.5, s => s.ApplyFault(LineFaults.Leak, value: 3e-7)),
            (40.25, s => s.ApplyFault(LineFaults.Air, value: 1e-6)),
            (70.75, s => s.SetTemperature(278.15)),
            (90.125, s => s.ApplyFault(PumpFaults.Worn, value: 0.6)),
            (120.5, s => s.HealFault(LineFaults.Leak)),
            (150, s => s.SetPumpContact(false))),
    ];

    internal static Scenario Named(string name) => All.Single(scenario => scenario.Name == name);

    /// <summary>Three sections of different size, five bar to move them, six points with lines of their own behind a line of 5 m.</summary>
    internal static PlantDescription Base(LubricantDescription lubricant, double temperatureK, Func<DividerDescription, DividerDescription>? change = null)
    {
        double[] strokes = [0.16, 0.24, 0.32];
        var divider = new DividerDescription
        {
            Sections = [.. strokes.Select((v, i) => Plants.Section(i + 1, v * Cm3) with { BreakawayPa = (7 + i) * Bar, FrictionPa = 5 * Bar })],
        };
        divider = change?.Invoke(divider) ?? divider;
        return new PlantDescription
        {
            Name = "proof",
            Lubricant = lubricant,
            TemperatureK = temperatureK,
            Reservoir = new ReservoirDescription { CapacityM3 = 4e-3, ContentM3 = 3e-3, LowLevelM3 = 1e-3, EmptyLevelM3 = 2e-4 },
            Pump = Cam,
            Line = Line(Tube),
            Relief = new ReliefDescription { OpeningPressurePa = 250 * Bar, OverridePa = 10 * Bar },
            Divider = divider,
            Outlets = [.. PortGroups.DefaultOutlets(divider).Select((o, i) => o with { LineLengthM = 1 + (0.5 * i), LineBoreM = 4e-3, BackPressurePa = (2 + (3 * i)) * Bar })],
            CycleSwitches =
            [
                new CycleSwitchDescription { Name = "a", Section = "2" },
                new CycleSwitchDescription { Name = "b", Section = "3", End = Side.L, TripTravel = 0.3 },
            ],
        };
    }

    internal static PlantDescription Sections(PlantDescription plant, Func<SectionDescription, SectionDescription> change) =>
        plant with { Divider = plant.Divider with { Sections = [.. plant.Divider.Sections.Select(change)] } };

    internal static PlantDescription Outlet(PlantDescription plant, int index, Func<OutletDescription, OutletDescription> change) =>
        plant with { Outlets = [.. plant.Outlets.Select((o, i) => i == index ? change(o) : o)] };

    internal static PlantDescription WithoutOutletLines(PlantDescription plant) =>
        plant with { Outlets = [.. plant.Outlets.Select(o => o with { LineLengthM = 0 })] };

    internal static LineDescription Line(params IReadOnlyList<LineSegmentDescription> segments) =>
        new() { VolumeM3 = 20 * Cm3, BulkModulusPa = 1.4e9, Segments = segments };

    // Some ten cycles, then what is stored runs on, then some more.
    private static Scenario Dose(string name, PlantDescription plant) => new(
        name,
        plant,
        150,
        (0, s => s.SetPumpContact(true)),
        (100.3, s => s.SetPumpContact(false)),
        (115.7, s => s.SetPumpContact(true)),
        (140.1, s => s.SetPumpContact(false)));

    private static PlantDescription Air(double exponent)
    {
        PlantDescription plant = Base(ProofLubricants.Oil, 303.15);
        return plant with
        {
            Line = plant.Line with { AirM3 = 1 * Cm3, GasExponent = exponent },
            Reservoir = plant.Reservoir with { EntrainedAir = 0.02 },
        };
    }

    private static PlantDescription Everything()
    {
        PlantDescription plant = Sections(Base(ProofLubricants.Grease, 283.15, d => d with { HalfLimitLossPa = 2 * Bar, StrokeFlowLimitM3PerS = 3e-6 }), s => s with { BypassM3PerSPa = 1e-15 });
        return Outlet(plant, 3, o => o with { BackPressurePa = 50 * Bar, CheckValvePa = 1 * Bar }) with
        {
            Pump = Cam with { SlipM3PerSPa = 3e-15, FillingLoss = 0.05, SpeedSagPerPa = 5e-9 },
            Line = Line(Tube, Hose) with { AirM3 = 0.5 * Cm3, StrainerLossPa = 1 * Bar },
            Reservoir = plant.Reservoir with { EntrainedAir = 0.01 },
            Relief = Relief with { OpeningPressurePa = 95 * Bar, ReseatPressurePa = 85 * Bar },
        };
    }

    private static PlantDescription Master()
    {
        PlantDescription main = Base(ProofLubricants.Oil, 303.15);
        DividerDescription Small(int first) => new()
        {
            Sections = [.. Enumerable.Range(0, 3).Select(i => Plants.Section(first + i, (0.05 + (0.03 * i)) * Cm3) with { BreakawayPa = 6 * Bar, FrictionPa = 4 * Bar })],
        };
        SecondaryDividerDescription One(string name, string fedBy, int first) =>
            new() { Name = name, FedBy = fedBy, VolumeM3 = 15 * Cm3, BulkModulusPa = 1.2e9, Divider = Small(first) };
        SecondaryDividerDescription[] secondaries = [One("front", "1L", 11), One("rear", "3R", 21)];
        OutletDescription[] points = [.. secondaries.SelectMany(s => PortGroups.DefaultOutlets(s.Divider)).Select((o, i) => o with { LineLengthM = 1, BackPressurePa = (1 + i) * Bar })];
        return main with
        {
            Secondaries = secondaries,
            Outlets = [.. main.Outlets, .. points],
            CycleSwitches = [.. main.CycleSwitches, new CycleSwitchDescription { Name = "c", Section = "12" }],
        };
    }

    // Eight injectors along two segments: pressed until the end's switch trips, held, vented until the pressure is gone.
    private static Scenario Injectors()
    {
        PlantDescription plant = Base(ProofLubricants.Oil, 303.15) with
        {
            Divider = DividerDescription.None,
            CycleSwitches = [],
            Line = Line(Tube, Tube with { LengthM = 3 }),
            Outlets = [.. Enumerable.Range(0, 8).Select(i => new OutletDescription { Name = $"p{i}", Ports = [], LineLengthM = 2, BackPressurePa = i * Bar })],
            Injectors =
            [
                .. Enumerable.Range(0, 8).Select(i => new InjectorDescription
                {
                    Name = $"i{i}",
                    Outlet = $"p{i}",
                    VolumeM3 = (0.1 + (0.05 * i)) * Cm3,
                    DischargePa = (60 + i) * Bar,
                    RechargePa = 15 * Bar,
                    RechargeS = 0.5,
                    Segment = i % 3,
                }),
            ],
            VentValve = new VentValveDescription { OpenM3PerSPa = 3e-12, NormallyOpen = true },
            PressureSwitch = new PressureSwitchDescription { TripPa = 110 * Bar, ResetPa = 5 * Bar, Place = LinePlace.End },
        };
        return new Scenario("injectors", plant, 150, (0, Press)) { Control = () => Alternate() };

        static void Press(LubricationSystem system)
        {
            system.SetVentValve(true);
            system.SetPumpContact(true);
        }

        static Action<LubricationSystem> Alternate()
        {
            bool pressing = true;
            return system =>
            {
                if (pressing && system.PressureSwitchOn)
                {
                    pressing = false;
                    system.SetPumpContact(false);
                    system.SetVentValve(false);
                }
                else if (!pressing && !system.PressureSwitchOn && system.InjectorDischarged(7) == 0)
                {
                    pressing = true;
                    Press(system);
                }
            };
        }
    }
}
