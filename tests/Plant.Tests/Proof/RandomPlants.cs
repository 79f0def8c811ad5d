using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
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

/// <summary>Plants drawn from small to large, every number within what such plants have; every kind of part in some of them.</summary>
internal static class RandomPlants
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    internal static readonly Gen<LubricantDescription> Lubricant =
        Gen.OneOf(Gen.Const<LubricantDescription>(ProofLubricants.Oil), Gen.Const<LubricantDescription>(ProofLubricants.Grease), Gen.Const<LubricantDescription>(ProofLubricants.StiffGrease));

    internal static readonly Gen<double> TemperatureK = Gen.Double[263, 343];

    internal static readonly Gen<LineSegmentDescription> Segment =
        Gen.Select(Gen.Double[0.5, 15], Gen.Double[4, 12], Among(1e13, 35e9, 0.5e9), Gen.Int[1, 3])
            .Select((length, bore, wall, cells) => new LineSegmentDescription { LengthM = length, BoreM = bore * 1e-3, WallModulusPa = wall, Cells = cells });

    internal static readonly Gen<LineDescription> Line =
        Gen.Select(Log(5 * Cm3, 200 * Cm3), Gen.Double[0.5e9, 1.8e9], Segment.Array[0, 3], Sometimes(0.3, Log(0.01 * Cm3, 2 * Cm3)), Among(1.0, 1.2, 1.4), Sometimes(0.3, Gen.Double[0.1, 3]))
            .Select((volume, modulus, segments, air, exponent, strainer) => new LineDescription
            {
                VolumeM3 = volume,
                BulkModulusPa = modulus,
                Segments = segments,
                AirM3 = Math.Min(air, volume / 2),
                GasExponent = exponent,
                StrainerLossPa = strainer * Bar,
            });

    internal static readonly Gen<PumpDescription> Pump = Gen.OneOf<PumpDescription>(
        Log(0.02 * Cm3, 1 * Cm3).Select(flow => (PumpDescription)new ConstantFlowPumpDescription { FlowM3PerS = flow }),
        Gen.Select(Gen.Double[4, 10], Gen.Double[3, 12], Log(0.2, 5), Gen.Double[0.7, 1], Sometimes(0.5, Log(1e-16, 3e-14)), Sometimes(0.5, Gen.Double[0, 0.1]), Sometimes(0.4, Gen.Double[1e-9, 2e-8]), Gen.Int[1, 12])
            .Select((bore, stroke, speed, efficiency, slip, filling, sag, pieces) => (PumpDescription)new CamPumpDescription
            {
                PistonBoreM = bore * 1e-3,
                StrokeM = stroke * 1e-3,
                SpeedRevPerS = speed,
                VolumetricEfficiency = efficiency,
                SlipM3PerSPa = slip,
                FillingLoss = filling,
                SpeedSagPerPa = sag,
                DeliverySegments = pieces,
            }));

    internal static readonly Gen<ReliefDescription> Relief =
        Gen.Select(Gen.Double[80, 250], Sometimes(0.7, Gen.Double[1, 30]), Log(1e-7, 1e-5), Sometimes(0.5, Gen.Double[1, 20]))
            .Select((open, over, rated, band) => new ReliefDescription { OpeningPressurePa = open * Bar, OverridePa = over * Bar, RatedFlowM3PerS = rated, ReseatPressurePa = band > 0 ? (open - band) * Bar : null });

    private static readonly Gen<SectionDescription> Section =
        Gen.Select(Log(0.05 * Cm3, 1 * Cm3), Among(SectionOutlets.Single, SectionOutlets.Twin, SectionOutlets.Twin), Gen.Double[2, 15], Gen.Double[0.3, 1], Sometimes(0.4, Log(1e-17, 1e-14)), Sometimes(0.2, Gen.Double[0, 1]))
            .Select((volume, outlets, breakaway, friction, bypass, travel) => new SectionDescription
            {
                Name = "",
                VolumePerStrokeM3 = volume,
                Outlets = outlets,
                BreakawayPa = breakaway * Bar,
                FrictionPa = breakaway * friction * Bar,
                BypassM3PerSPa = bypass,
                InitialTravel = travel,
            });

    private static readonly Gen<DividerDescription> Divider =
        Gen.Select(Section.Array[3, 7], Log(3e-7, 1e-5), Log(100, 4 * Bar), Sometimes(0.5, Log(1e-12, 1e-9)))
            .Select((sections, limit, loss, clearance) => new DividerDescription
            {
                Sections = sections,
                StrokeFlowLimitM3PerS = limit,
                HalfLimitLossPa = loss,
                LandClearanceFlowM3PerS = clearance > 0 ? clearance : null,
            });

    private static readonly Gen<OutletDescription> Point =
        Gen.Select(Gen.Double[0, 40], Sometimes(0.3, Gen.Double[0.2, 2]), Sometimes(0.6, Gen.Double[0.2, 6]), Gen.Double[3, 6])
            .Select((back, check, length, bore) => new OutletDescription { Name = "", Ports = [], BackPressurePa = back * Bar, CheckValvePa = check * Bar, LineLengthM = length, LineBoreM = bore * 1e-3 });

    private static readonly Gen<ReservoirDescription> Reservoir =
        Gen.Select(Sometimes(0.3, Gen.Double[10, 60]), Sometimes(0.3, Gen.Double[1, 20]), Sometimes(0.3, Gen.Double[0.001, 0.1]))
            .Select((little, aerates, entrained) => new ReservoirDescription
            {
                CapacityM3 = 2e-3,
                ContentM3 = little > 0 ? little * Cm3 : 1.5e-3,
                LowLevelM3 = 8 * Cm3,
                EmptyLevelM3 = 3 * Cm3,
                LevelHysteresisM3 = 1 * Cm3,
                AeratesBelowM3 = aerates * Cm3,
                EntrainedAir = entrained,
            });

    private static readonly Gen<(LubricantDescription Lubricant, double TemperatureK, ReservoirDescription Reservoir, PumpDescription Pump, LineDescription Line, ReliefDescription Relief)> Supply =
        Gen.Select(Lubricant, TemperatureK, Reservoir, Pump, Line, Relief);

    private static readonly Gen<(double VolumeM3, double ModulusPa)> Between = Gen.Select(Log(2 * Cm3, 50 * Cm3), Gen.Double[0.5e9, 1.8e9]);

    /// <summary>With a divider; a third of them with one or two secondary dividers.</summary>
    internal static readonly Gen<PlantDescription> WithDivider =
        Gen.Select(Supply, Divider, Gen.Select(Divider, Between).Array[0, 2], Point.Array[64], Gen.Int[0, 2], Gen.Int[0, 6])
            .Select((supply, main, others, points, secondaries, section) => Describe(supply, main, secondaries == 2 ? others : [], points, section));

    /// <summary>With one to ten injectors along the line, and a vent valve.</summary>
    internal static readonly Gen<PlantDescription> WithInjectors =
        Gen.Select(
            Supply,
            Gen.Select(Log(0.05 * Cm3, 1.5 * Cm3), Gen.Double[25, 70], Gen.Double[3, 20], Log(0.05, 5), Gen.Int[0, 3]).Array[1, 10],
            Point.Array[10],
            Log(1e-13, 1e-11),
            Gen.Bool)
            .Select(Describe);

    internal static readonly Gen<PlantDescription> Any = Gen.Frequency((4, WithDivider), (1, WithInjectors));

    /// <summary>Evenly spread over the logarithm.</summary>
    internal static Gen<double> Log(double low, double high) => Gen.Double[0, 1].Select(part => low * Math.Pow(high / low, part));

    private static Gen<T> Among<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    /// <summary>With a chance what is drawn, else 0.</summary>
    internal static Gen<double> Sometimes(double chance, Gen<double> drawn) => Gen.Select(Gen.Double[0, 1], drawn).Select((dice, value) => dice < chance ? value : 0);

    private static PlantDescription Describe(
        (LubricantDescription Lubricant, double TemperatureK, ReservoirDescription Reservoir, PumpDescription Pump, LineDescription Line, ReliefDescription Relief) supply,
        DividerDescription main,
        (DividerDescription Divider, (double VolumeM3, double ModulusPa) Between)[] others,
        OutletDescription[] points,
        int section)
    {
        DividerDescription divider = Named(main, "m");
        var outlets = new List<OutletDescription>(PortGroups.DefaultOutlets(divider));
        var secondaries = new List<SecondaryDividerDescription>();
        for (int i = 0; i < others.Length; i++)
        {
            DividerDescription other = Named(others[i].Divider, $"s{i}");
            secondaries.Add(new SecondaryDividerDescription { Name = $"s{i}", FedBy = outlets[i].Name, VolumeM3 = others[i].Between.VolumeM3, BulkModulusPa = others[i].Between.ModulusPa, Divider = other });
            outlets.AddRange(PortGroups.DefaultOutlets(other));
        }

        return Supplied(supply) with
        {
            Divider = divider,
            Secondaries = secondaries,
            Outlets = [.. outlets.Select((outlet, i) => points[i % points.Length] with { Name = outlet.Name, Ports = outlet.Ports })],
            CycleSwitches =
            [
                new CycleSwitchDescription { Name = "a", Section = divider.Sections[section % divider.Sections.Count].Name },
                new CycleSwitchDescription { Name = "b", Section = divider.Sections[0].Name, End = Side.L, TripTravel = 0.25, Hysteresis = 0 },
            ],
        };
    }

    private static PlantDescription Describe(
        (LubricantDescription Lubricant, double TemperatureK, ReservoirDescription Reservoir, PumpDescription Pump, LineDescription Line, ReliefDescription Relief) supply,
        (double VolumeM3, double DischargeBar, double RechargeBar, double RechargeS, int Segment)[] injectors,
        OutletDescription[] points,
        double vent,
        bool normallyOpen) => Supplied(supply) with
        {
            Divider = DividerDescription.None,
            Outlets = [.. injectors.Select((_, i) => points[i] with { Name = $"p{i}" })],
            Injectors =
            [
                .. injectors.Select((injector, i) => new InjectorDescription
                {
                    Name = $"i{i}",
                    Outlet = $"p{i}",
                    VolumeM3 = injector.VolumeM3,
                    DischargePa = injector.DischargeBar * Bar,
                    RechargePa = injector.RechargeBar * Bar,
                    RechargeS = injector.RechargeS,
                    Segment = Math.Min(injector.Segment, supply.Line.Segments.Count),
                }),
            ],
            VentValve = new VentValveDescription { OpenM3PerSPa = vent, NormallyOpen = normallyOpen },
        };

    private static DividerDescription Named(DividerDescription divider, string prefix) =>
        divider with { Sections = [.. divider.Sections.Select((section, i) => section with { Name = $"{prefix}{i + 1}" })] };

    private static PlantDescription Supplied(
        (LubricantDescription Lubricant, double TemperatureK, ReservoirDescription Reservoir, PumpDescription Pump, LineDescription Line, ReliefDescription Relief) supply) => new()
        {
            Name = "random",
            Lubricant = supply.Lubricant,
            TemperatureK = supply.TemperatureK,
            Reservoir = supply.Reservoir,
            Pump = supply.Pump,
            Line = supply.Line,
            Relief = supply.Relief,
            Divider = DividerDescription.None,
            Outlets = [],
            PressureSwitch = new PressureSwitchDescription { TripPa = 75 * Bar, ResetPa = 40 * Bar, Place = LinePlace.End },
            Transmitter = new PressureTransmitterDescription { LagS = 0.2, Place = LinePlace.End },
            HasPressureTransmitter = true,
            Gauge = new PressureTransmitterDescription { RangePa = 2.5e7 },
            Shaft = new ShaftDescription { InitialSpeedRevPerS = 3 },
        };
}
