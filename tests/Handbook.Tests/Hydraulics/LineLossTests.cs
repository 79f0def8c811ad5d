using System;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>
/// The loss in the main line as a running plant shows it between its two ends, against figures worked out from the closed
/// forms: Hagen-Poiseuille, and Herschel-Bulkley as pi·R³·n·(tau_w/K)^(1/n)·(1-X)^((n+1)/n)·[...] (from memory).
/// </summary>
public sealed class LineLossTests
{
    private const double Flow = 10;

    /// <summary>
    /// Source: lithium grease at 25 degC, yield stress, K and n from memory; the drop for 10 cm3/min through 5 m of 6 mm
    /// bore derived from them: 0.485, 8.01 and 26.99 bar.
    /// </summary>
    [Theory]
    [InlineData("NLGI 00", 0.485, 0.0005)]
    [InlineData("NLGI 1", 8.01, 0.005)]
    [InlineData("NLGI 2", 26.99, 0.005)]
    public void Ten_cubic_centimetres_a_minute_of_grease_lose_in_5_m_of_6_mm(string grease, double bar, double halfUnit)
    {
        LubricationSystem system = Plant(grease, 298.15).Running();
        Near.Figure(bar, halfUnit, SteadyLossPa(system) / HandbookPlants.Bar);
    }

    /// <summary>
    /// Source: the same table, start-up dP = 4·L·tau_y/D: 6.30 and 21.67 bar. Grease that stands holds that much: what the
    /// pump leaves behind sinks towards it, ever more slowly, and not below.
    /// </summary>
    [Theory]
    [InlineData("NLGI 1", 6.30)]
    [InlineData("NLGI 2", 21.67)]
    public void Grease_that_stands_holds_its_start_up_pressure_between_the_ends_of_the_line(string grease, double bar)
    {
        LubricationSystem system = Plant(grease, 298.15).Running();
        SteadyLossPa(system);
        system.SetPumpContact(false);
        system.AdvanceTo(system.NowUs + 3_600_000_000);

        double holdsBar = (system.LinePressurePa - system.EndPressurePa) / HandbookPlants.Bar;
        Assert.InRange(holdsBar, bar * 0.995, bar * 1.01);
    }

    /// <summary>
    /// Source: ISO VG 220 with 19.0 mm²/s at 100 degC by ASTM D341: 852 mm²/s at 20 degC, 78.8 at 60, 5287 at 0 (derived);
    /// a laminar loss goes with the dynamic viscosity, which is that times the density.
    /// </summary>
    [Theory]
    [InlineData(0, 5287, 60, 78.8)]
    [InlineData(0, 5287, 20, 852)]
    [InlineData(20, 852, 60, 78.8)]
    public void Cold_oil_loses_more_than_warm_oil_in_the_ratio_of_their_viscosities(double coldC, double coldMm2PerS, double warmC, double warmMm2PerS)
    {
        double cold = SteadyLossPa(Plant("ISO VG 220", coldC + 273.15).Running());
        double warm = SteadyLossPa(Plant("ISO VG 220", warmC + 273.15).Running());

        double expansion = LubricantFiles.Named("ISO VG 220").ExpansionPerK.Value;
        double densities = (1 - (expansion * (coldC - 15))) / (1 - (expansion * (warmC - 15)));
        Near.Relative(coldMm2PerS / warmMm2PerS * densities, cold / warm, 1e-3);
    }

    /// <summary>Source: Hagen-Poiseuille, dP = 128·mu·L·Q/(pi·d^4).</summary>
    [Fact]
    public void Oil_loses_in_the_plant_what_Hagen_and_Poiseuille_have_it_lose()
    {
        PlantDescription plant = Plant("ISO VG 220", 313.15);
        OilDescription oil = Assert.IsType<OilDescription>(plant.Lubricant);
        double viscosity = 220e-6 * oil.DensityKgPerM3.Value * (1 - (oil.ExpansionPerK.Value * 25));
        double expected = 128 * viscosity * 5 * Flow * HandbookPlants.Cm3PerMin / (Math.PI * Math.Pow(6e-3, 4));
        Near.Relative(expected, SteadyLossPa(plant.Running()), 1e-4);
    }

    private static PlantDescription Plant(string lubricant, double temperatureK)
    {
        PlantDescription plant = HandbookPlants.Of(Flow, [1, 1, 1]);
        return plant with
        {
            Lubricant = LubricantFiles.Named(lubricant),
            TemperatureK = temperatureK,
            Line = plant.Line with { Segments = [new LineSegmentDescription { LengthM = 5, BoreM = 6e-3, WallModulusPa = 35e9 }] },
        };
    }

    // Each stroke lasts 6 s. Late in one the line no longer fills: what the pump brings passes all of it.
    private static double SteadyLossPa(LubricationSystem system)
    {
        system.AdvanceTo(30_000_000);
        system.AfterStrokes(system.TotalStrokes + 1);
        system.AdvanceTo(system.NowUs + 5_000_000);
        double delivered = system.Balance().DeliveredM3;
        double loss = system.LinePressurePa - system.EndPressurePa;
        system.AdvanceTo(system.NowUs + 500_000);
        Near.Relative(Flow * HandbookPlants.Cm3PerMin, (system.Balance().DeliveredM3 - delivered) / 0.5, 1e-4);
        return loss;
    }
}
