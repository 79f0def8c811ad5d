using System;
using System.Collections.Generic;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Tests.Support;
using LubeController.Tests.Support.Fluids;
using LubeController.Tests.Support.Spice;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics.Spice;

/// <summary>
/// The line's pressures over time, against the general circuit simulator ngspice through the hydraulic-electric analogy, from
/// the same description: within one hundredth of the curve's range at every one of a thousand times. With the inlet blocked
/// the line stands alone.
/// </summary>
[Trait("Run", "Long")]
public sealed class LineTransientTests(ITestOutputHelper output)
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    private const double Bound = 0.01;

    private static readonly LineSegmentDescription Tube = new() { LengthM = 20, BoreM = 3e-3, WallModulusPa = 35e9 };

    private static readonly LineSegmentDescription Hose = new() { LengthM = 3, BoreM = 5e-3, WallModulusPa = 0.3e9, Cells = 4 };

    [Fact]
    public void A_blocked_line_is_pressed_until_the_relief_valve_opens_and_takes_the_flow()
    {
        PlantDescription plant = Plant(Tube);
        Compare(plant, new LineDeck(plant).ConstantFlowUntil(1e3), 12, _ => { });
    }

    [Fact]
    public void A_relief_valve_that_reseats_lower_lets_the_pressure_fall_to_where_it_passes_the_flow()
    {
        PlantDescription plant = Plant(Tube) with { Relief = new ReliefDescription { OpeningPressurePa = 80 * Bar, OverridePa = 10 * Bar, ReseatPressurePa = 60 * Bar, RatedFlowM3PerS = 6e-7 } };
        Compare(plant, new LineDeck(plant).ConstantFlowUntil(1e3), 12, _ => { });
    }

    [Fact]
    public void A_relief_valve_that_reseats_lower_shuts_while_the_pump_fills_and_opens_again_with_its_next_strokes()
    {
        PlantDescription plant = Plant(Tube) with
        {
            Pump = new CamPumpDescription { PistonBoreM = 8e-3, StrokeM = 8e-3, SpeedRevPerS = 0.7 },
            Relief = new ReliefDescription { OpeningPressurePa = 80 * Bar, OverridePa = 1 * Bar, ReseatPressurePa = 75 * Bar, RatedFlowM3PerS = 2e-6 },
        };
        Compare(plant, new LineDeck(plant).CamUntil(15), 15, _ => { });
    }

    [Fact]
    public void Pressure_decays_through_a_leak_after_the_pump_has_stopped()
    {
        PlantDescription plant = Plant(Tube);
        const double leak = 1.2e-7;
        Compare(plant, new LineDeck(plant).LeakAtEnd(leak).ConstantFlowUntil(3), 20, system => system.ApplyFault(LineFaults.Leak, value: leak), offS: 3);
    }

    [Fact]
    public void A_tube_and_a_hose_behind_it_fill_and_even_out()
    {
        PlantDescription plant = Plant(Tube, Hose);
        Compare(plant, new LineDeck(plant).ConstantFlowUntil(4), 20, _ => { }, offS: 4);
    }

    [Fact]
    public void A_hose_and_a_tube_behind_it_are_filled_stroke_by_stroke_and_leak_empty()
    {
        PlantDescription plant = Plant(Hose, Tube) with { Pump = new CamPumpDescription { PistonBoreM = 8e-3, StrokeM = 8e-3, SpeedRevPerS = 0.5, VolumetricEfficiency = 0.9 } };
        const double leak = 8e-8;
        Compare(plant, new LineDeck(plant).LeakAtEnd(leak).CamUntil(12), 40, system => system.ApplyFault(LineFaults.Leak, value: leak), offS: 12);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.4)]
    public void Air_takes_the_first_flow_and_gives_it_back_last(double exponent)
    {
        PlantDescription plant = Plant();
        plant = plant with { Line = plant.Line with { AirM3 = 1 * Cm3, GasExponent = exponent } };
        const double leak = 6e-8;
        Compare(plant, new LineDeck(plant).LeakAtEnd(leak).ConstantFlowUntil(15), 60, system => system.ApplyFault(LineFaults.Leak, value: leak), offS: 15);
    }

    /// <summary>The plant file gives oil, temperature, line, strainer and relief valve; pump and reservoir without what has no circuit element: slip, sag and air.</summary>
    [Theory]
    [InlineData("brick-press", 60)]
    [InlineData("kiln-support-rollers", 60)]
    public void The_line_of_a_plant_file_is_filled_stroke_by_stroke_until_its_relief_valve_opens(string name, double endS)
    {
        PlantDescription plant = Repository.ReadPlant($"hil-scripts/plants/{name}.plant.yaml");
        var cam = (CamPumpDescription)plant.Pump;
        plant = plant with
        {
            Pump = new CamPumpDescription { PistonBoreM = cam.PistonBoreM, StrokeM = cam.StrokeM, SpeedRevPerS = cam.SpeedRevPerS, VolumetricEfficiency = cam.VolumetricEfficiency, DeliverySegments = cam.DeliverySegments },
            Reservoir = plant.Reservoir with { EntrainedAir = 0 },
        };
        Compare(plant, new LineDeck(plant).CamUntil(endS), endS, _ => { });
    }

    private static PlantDescription Plant(params IReadOnlyList<LineSegmentDescription> segments)
    {
        var divider = new DividerDescription { Sections = [Section(1), Section(2), Section(3)] };
        return new PlantDescription
        {
            Name = "line",
            Lubricant = Lubricants.NewtonianOil(2.0),
            Reservoir = new ReservoirDescription { CapacityM3 = 1e-2, ContentM3 = 1e-2, LowLevelM3 = 1e-3, EmptyLevelM3 = 1e-4 },
            Pump = new ConstantFlowPumpDescription { FlowM3PerS = 3e-7 },
            Line = new LineDescription { VolumeM3 = 60 * Cm3, BulkModulusPa = 1.2e9, Segments = segments },
            Relief = new ReliefDescription { OpeningPressurePa = 120 * Bar, OverridePa = 15 * Bar, RatedFlowM3PerS = 5e-7 },
            Divider = divider,
            Outlets = PortGroups.DefaultOutlets(divider),
        };
    }

    private static SectionDescription Section(int number) => new() { Name = $"{number}", VolumePerStrokeM3 = 0.2 * Cm3 };

    private void Compare(PlantDescription plant, LineDeck deck, double endS, Action<LubricationSystem> fault, double offS = double.PositiveInfinity)
    {
        Assert.SkipUnless(ExternalTool.NgSpice.IsInstalled, ExternalTool.NgSpice.Reason);
        const int times = 1000;
        IReadOnlyList<SpiceCurve> curves = NgSpice.Transient(deck.Finish(), endS, endS / 20_000, "p0", deck.End);
        var system = new LubricationSystem(plant, 1);
        system.ApplyFault(DividerFaults.InletBlocked);
        fault(system);
        system.SetPumpContact(true);
        double worst = 0;
        for (int i = 1; i <= times; i++)
        {
            double atS = endS * i / times;
            if (atS > offS && system.PumpContact)
            {
                system.AdvanceTo((long)(offS * 1e6));
                system.SetPumpContact(false);
            }

            system.AdvanceTo((long)(atS * 1e6));
            worst = Math.Max(worst, Math.Abs((system.LinePressurePa / Bar) - curves[0].At(atS)) / curves[0].Range);
            worst = Math.Max(worst, Math.Abs((system.EndPressurePa / Bar) - curves[1].At(atS)) / curves[1].Range);
        }

        output.WriteLine($"{curves[0].Range:0.0} bar at the pump, {curves[1].Range:0.0} bar at the end, apart by at most {worst:0.0000 %} of them; {system.StepCount} steps");
        Assert.True(curves[0].Range > 20, "Hardly anything happened.");
        Assert.InRange(worst, 0, Bound);
    }
}
