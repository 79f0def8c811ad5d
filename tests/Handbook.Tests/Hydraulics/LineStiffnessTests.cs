using System;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>How far a plant's own line gives way, measured from what is pumped into it.</summary>
public sealed class LineStiffnessTests
{
    /// <summary>
    /// Source: Rabie, Fluid Power Engineering, eq. 2.55, B = kappa·P·Bo/(kappa·P·(1 - a) + a·Bo), a shrunk from atmosphere to P
    /// (absolute); figures derived: Bo 1.4 GPa, 1 % gas at atmosphere, kappa 1: 0.576 GPa at 10 bar, 1.380 GPa at 100 bar.
    /// </summary>
    [Theory]
    [InlineData(10, 0.576)]
    [InlineData(100, 1.380)]
    public void A_line_with_gas_is_as_stiff_as_Rabie_has_it(double absoluteBar, double printedGPa)
    {
        const double volume = 20e-6;
        double pressure = absoluteBar * HandbookPlants.Bar;
        // What fills the line at that pressure was gas to 1 % at atmosphere.
        double air = 0.01 * volume / (0.99 + (0.01 * Compliance.AtmospherePa / pressure));
        LubricationSystem system = Shut(new LineDescription { VolumeM3 = volume, BulkModulusPa = 1.4e9, AirM3 = air });

        // Between pressures whose product is P squared the gas gives up what its slope at P says.
        (double firstPa, double firstM3) = Reached(system, pressure / 1.5);
        (double lastPa, double lastM3) = Reached(system, pressure * pressure / firstPa);
        double measuredPa = volume * (lastPa - firstPa) / (lastM3 - firstM3);

        Near.Relative(pressure, Math.Sqrt(firstPa * lastPa), 1e-3);
        Near.Relative(Compliance.WithEntrainedGasPa(1.4e9, 0.01, Math.Sqrt(firstPa * lastPa)), measuredPa, 3e-3);
        Near.Relative(printedGPa, measuredPa / 1e9, 4e-3);
    }

    /// <summary>
    /// Source: C = V/B; derived: 5 m of 6 mm bore are 141.37 cm3, 0.0707 cm3/bar at 0.2 GPa, 0.0283 at 0.5 GPa; lubricant and
    /// hose in series (Merritt, Hydraulic Control Systems, eq. 4-49).
    /// </summary>
    [Theory]
    [InlineData(0.2, 0.0707)]
    [InlineData(0.5, 0.0283)]
    public void A_hose_takes_its_volume_over_its_modulus(double gPa, double printedCm3PerBar)
    {
        double wallPa = 1 / ((1 / (gPa * 1e9)) - (1 / 1.4e9));
        LubricationSystem system = Shut(new LineDescription
        {
            VolumeM3 = 1e-7,
            BulkModulusPa = 1.4e9,
            Segments = [new LineSegmentDescription { LengthM = 5, BoreM = 6e-3, WallModulusPa = wallPa, Cells = 4 }],
        });
        system.AdvanceTo(20_000_000);
        system.SetPumpContact(false);
        system.AdvanceTo(60_000_000);

        Near.Relative(system.LinePressurePa, system.EndPressurePa, 1e-9);
        Assert.InRange(system.LinePressurePa, 20 * HandbookPlants.Bar, 200 * HandbookPlants.Bar);
        Near.Figure(printedCm3PerBar, 0.00006, system.PumpedM3 / HandbookPlants.Cm3 / (system.LinePressurePa / HandbookPlants.Bar));
    }

    private static LubricationSystem Shut(LineDescription line)
    {
        LubricationSystem system = (HandbookPlants.Of(12, [0.2, 0.2, 0.2]) with { Line = line }).Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        return system;
    }

    // Between the ends of steps the pressure is drawn straight, at most 2.5 kPa from its curve.
    private static (double AbsolutePa, double PumpedM3) Reached(LubricationSystem system, double absolutePa)
    {
        while (system.LinePressurePa + Compliance.AtmospherePa < absolutePa)
            system.AdvanceTo(system.NowUs + 100);
        return (system.LinePressurePa + Compliance.AtmospherePa, system.PumpedM3);
    }
}
