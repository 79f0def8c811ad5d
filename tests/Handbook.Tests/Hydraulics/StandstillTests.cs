using System;
using System.Linq;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Pistons;
using LubeController.Plant.Sensors;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>What happens after the pump has stopped: what is stored runs on, and what is left decays past worn pistons.</summary>
public sealed class StandstillTests
{
    private const double BypassM3PerSPa = 2e-16;

    /// <summary>
    /// Source: discharge of a compliance C = V/B through a resistance, p = p0·exp(-t/RC), derived; three pistons of equal
    /// bypass lie side by side, each from the gallery to an outlet without back-pressure.
    /// </summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.4)]
    public void Pressure_at_standstill_decays_past_worn_pistons_as_exp_of_minus_t_over_RC(double viscosityPaS)
    {
        LubricationSystem system = Pressed(viscosityPaS, 313.15);
        double start = system.LinePressurePa;
        double timeConstantS = 20e-6 / 1.4e9 / (3 * BypassM3PerSPa);

        long fromUs = system.NowUs;
        foreach (double constants in new[] { 0.1, 0.5, 1, 2, 3 })
        {
            system.AdvanceTo(fromUs + (long)(constants * timeConstantS * 1e6));
            Near.Relative(start * Math.Exp(-constants), system.LinePressurePa, 0.01);
        }

        Assert.Equal(0, system.TotalStrokes);
    }

    /// <summary>
    /// Source: the same; bypass is stated at the reference viscosity, 40 degC, and goes with 1/viscosity: ISO VG 220 has
    /// 220 mm²/s there, 852 at 20 degC and 35.6 at 80 (derived by ASTM D341), times the density.
    /// </summary>
    [Theory]
    [InlineData(20, 852)]
    [InlineData(80, 35.6)]
    public void It_decays_the_slower_the_colder_the_oil_is(double celsius, double mm2PerS)
    {
        OilDescription oil = Assert.IsType<OilDescription>(LubricantFiles.Named("ISO VG 220"));
        LubricationSystem system = Pressed(oil, celsius + 273.15);
        double start = system.LinePressurePa;
        double densities = (1 - (oil.ExpansionPerK.Value * (celsius - 15))) / (1 - (oil.ExpansionPerK.Value * 25));
        double timeConstantS = 20e-6 / 1.4e9 / (3 * BypassM3PerSPa) * (mm2PerS / 220) * densities;

        system.AdvanceTo(system.NowUs + (long)(timeConstantS * 1e6));
        Near.Relative(start * Math.Exp(-1), system.LinePressurePa, 0.01);
    }

    /// <summary>
    /// Source: stored volume C·p with C = V/B, derived. A stroke against 60 bar presses the line up; the pump stops as it
    /// ends, and what is stored above the 5 bar that the next pistons need drives them on: common practice of the trade has
    /// it that pulses come after the pump has stopped.
    /// </summary>
    [Fact]
    public void What_is_stored_runs_on_after_the_pump_has_stopped_and_is_as_much_as_the_line_gave_up()
    {
        PlantDescription plant = HandbookPlants.Of(12, [0.2, 0.2, 0.2]).BackPressure("1R", 60) with
        {
            Line = new LineDescription { VolumeM3 = 50e-6, BulkModulusPa = 0.5e9 },
            CycleSwitches = [new CycleSwitchDescription { Name = "s", Section = "3" }],
        };
        LubricationSystem system = plant.Running();
        while (system.Strokes(0, Side.R) == 0)
            system.Step();
        system.SetPumpContact(false);
        double stored = 50e-6 / 0.5e9 * (system.LinePressurePa - (5 * HandbookPlants.Bar));
        double displaced = system.DisplacedM3;
        double delivered = system.Balance().DeliveredM3;
        Assert.Equal(0, system.TripCrossings(0));

        system.AdvanceTo(system.NowUs + 600_000_000);

        // 50 cm3 at 0.5 GPa and 60 bar hold 0.6 cm3: three strokes.
        Assert.InRange(stored / HandbookPlants.Cm3, 0.59, 0.61);
        Near.Relative(stored, system.DisplacedM3 - displaced, 2e-3);
        Near.Relative(stored, system.Balance().DeliveredM3 - delivered, 2e-3);
        Assert.Equal(1, system.TripCrossings(0));
        Near.Relative(5 * HandbookPlants.Bar, system.LinePressurePa, 2e-3);
    }

    private static LubricationSystem Pressed(double viscosityPaS, double temperatureK) => Pressed(Lubricants.NewtonianOil(viscosityPaS), temperatureK);

    // Up to 40 bar, below the 50 that would move a piston.
    private static LubricationSystem Pressed(LubricantDescription lubricant, double temperatureK)
    {
        PlantDescription plant = HandbookPlants.Of(12, [0.2, 0.2, 0.2], breakawayBar: 50);
        LubricationSystem system = (plant with
        {
            Lubricant = lubricant,
            TemperatureK = temperatureK,
            Divider = plant.Divider with { Sections = [.. plant.Divider.Sections.Select(section => section with { BypassM3PerSPa = BypassM3PerSPa })] },
            PressureSwitch = new PressureSwitchDescription { TripPa = 40 * HandbookPlants.Bar, ResetPa = 1 },
        }).Running();
        while (!system.PressureSwitchOn)
            system.Step();
        system.SetPumpContact(false);
        return system;
    }
}
