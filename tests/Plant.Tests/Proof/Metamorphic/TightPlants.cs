using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>
/// Plants whose cycle time a person could tell from pump and divider: nothing leaks, slips or is relieved. Single tests add
/// what theirs allows.
/// </summary>
internal static class TightPlants
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    internal static readonly Gen<LubricantDescription> Lubricant =
        Gen.Int[0, 2].Select(kind => kind switch { 0 => (LubricantDescription)ProofLubricants.Oil, 1 => ProofLubricants.Grease, _ => ProofLubricants.StiffGrease });

    private static readonly Gen<SectionDescription> Section =
        Gen.Select(Gen.Double[0.08, 0.4], Gen.Bool, Gen.Double[3, 12], Gen.Double[0.5, 1])
            .Select((volume, single, breakaway, friction) => new SectionDescription
            {
                Name = "",
                VolumePerStrokeM3 = volume * Cm3,
                Outlets = single ? SectionOutlets.Single : SectionOutlets.Twin,
                BreakawayPa = breakaway * Bar,
                FrictionPa = breakaway * friction * Bar,
            });

    private static readonly Gen<OutletDescription> Point =
        Gen.Select(Gen.Double[0, 30], Gen.Double[0.5, 4], Gen.Double[4, 6])
            .Select((back, length, bore) => new OutletDescription { Name = "", Ports = [], BackPressurePa = back * Bar, LineLengthM = length, LineBoreM = bore * 1e-3 });

    private static readonly Gen<LineDescription> Line =
        Gen.Select(Gen.Double[10, 40], Gen.Double[1.0, 1.6], Gen.Double[1, 8], Gen.Double[5, 8], Gen.Bool).Select((volume, modulus, length, bore, hose) => new LineDescription
        {
            VolumeM3 = volume * Cm3,
            BulkModulusPa = modulus * 1e9,
            Segments = [new LineSegmentDescription { LengthM = length, BoreM = bore * 1e-3, WallModulusPa = hose ? 0.8e9 : 35e9 }],
        });

    internal static readonly Gen<CamPumpDescription> Cam =
        Gen.Select(Gen.Double[6, 9], Gen.Double[6, 10], Gen.Double[0.8, 2.5], Gen.Double[0.8, 1])
            .Select((bore, stroke, speed, efficiency) => new CamPumpDescription { PistonBoreM = bore * 1e-3, StrokeM = stroke * 1e-3, SpeedRevPerS = speed, VolumetricEfficiency = efficiency, DeliverySegments = 6 });

    internal static readonly Gen<ConstantFlowPumpDescription> Constant =
        Gen.Double[8, 30].Select(flow => new ConstantFlowPumpDescription { FlowM3PerS = flow * Plants.Cm3PerMin });

    /// <summary>With a constant-flow pump; a relief valve that never opens.</summary>
    internal static readonly Gen<PlantDescription> Any =
        Gen.Select(Lubricant, Gen.Double[278, 318], Constant, Line, Section.Array[3, 6], Point.Array[12]).Select(Describe);

    /// <summary>The same with a cam pump.</summary>
    internal static readonly Gen<PlantDescription> WithCam = Gen.Select(Any, Cam).Select((plant, cam) => plant with { Pump = cam });

    /// <summary>What the line holds more for each Pa, air left out, m3/Pa.</summary>
    internal static double ComplianceM3PerPa(PlantDescription plant)
    {
        double sum = plant.Line.VolumeM3 / plant.Line.BulkModulusPa;
        foreach (LineSegmentDescription segment in plant.Line.Segments)
            sum += Math.PI / 4 * segment.BoreM * segment.BoreM * segment.LengthM * ((1 / plant.Line.BulkModulusPa) + (1 / segment.WallModulusPa));
        return sum;
    }

    internal static PlantDescription Describe(LubricantDescription lubricant, double temperatureK, PumpDescription pump, LineDescription line, SectionDescription[] sections, OutletDescription[] points)
    {
        var divider = new DividerDescription
        {
            Sections = [.. sections.Select((section, i) => section with { Name = $"{i + 1}" })],
            HalfLimitLossPa = 0.3 * Bar,
            StrokeFlowLimitM3PerS = 4e-6,
        };
        IReadOnlyList<OutletDescription> outlets = PortGroups.DefaultOutlets(divider);
        return new PlantDescription
        {
            Name = "tight",
            Lubricant = lubricant,
            TemperatureK = temperatureK,
            Reservoir = new ReservoirDescription { CapacityM3 = 0.1, ContentM3 = 0.1, LowLevelM3 = 1e-3, EmptyLevelM3 = 1e-4 },
            Pump = pump,
            Line = line,
            Relief = new ReliefDescription { OpeningPressurePa = 900 * Bar },
            Divider = divider,
            Outlets = [.. outlets.Select((outlet, i) => points[i % points.Length] with { Name = outlet.Name, Ports = outlet.Ports })],
            CycleSwitches = [new CycleSwitchDescription { Name = "a", Section = "2" }],
        };
    }
}
