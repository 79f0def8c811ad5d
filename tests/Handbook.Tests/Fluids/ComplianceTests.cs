using System;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>How liquid, gas and wall give way. The source stands beside each check.</summary>
public sealed class ComplianceTests
{
    private const double Psi = 6894.757;

    /// <summary>
    /// Source: trapped volume of oil heated by 50 degF: 3e5 psi × 0.00046 per degF × 50 = 6900 psi (worked example of a trapped
    /// volume, recomputed).
    /// </summary>
    [Fact]
    public void A_trapped_volume_that_is_warmed_rises_by_the_printed_pressure() =>
        Near.Figure(6900, 1e-9, Compliance.TrappedRisePa(3e5 * Psi, 0.00046 * 1.8, 50 / 1.8) / Psi);

    /// <summary>
    /// Source: Rabie, Fluid Power Engineering, eq. 2.55; figures derived: Bo 1.4 GPa, 1 % gas at atmosphere (1.01325 bar), kappa
    /// 1: 1.380 GPa at 100 bar, 0.576 GPa at 10 bar.
    /// </summary>
    [Theory]
    [InlineData(100, 1.380)]
    [InlineData(10, 0.576)]
    public void Oil_with_entrained_gas_is_as_stiff_as_Rabie_has_it(double bar, double printedGPa) =>
        Near.Figure(printedGPa, 0.0005, Compliance.WithEntrainedGasPa(1.4e9, 0.01, bar * 1e5) / 1e9);

    /// <summary>Trap, derived: the gas fraction at atmosphere put in unshrunk gives 0.586 and 0.093 GPa, far too soft.</summary>
    [Theory]
    [InlineData(100, 0.586)]
    [InlineData(10, 0.093)]
    public void The_gas_fraction_must_be_shrunk_to_the_pressure_before_it_is_put_in(double bar, double wrongGPa)
    {
        Near.Figure(wrongGPa, 0.0005, Compliance.WithGasPa(1.4e9, 0.01, bar * 1e5) / 1e9);
        double shrunk = Compliance.GasFractionAt(0.01, bar * 1e5);
        Assert.InRange(shrunk, 0.01 / bar, 0.0103 / bar);
        Near.Relative(Compliance.WithEntrainedGasPa(1.4e9, 0.01, bar * 1e5), Compliance.WithGasPa(1.4e9, shrunk, bar * 1e5), 1e-15);
    }

    /// <summary>Source: eq. 2.55 at its ends: without gas the liquid, all gas kappa·P; and the fraction at atmosphere is itself.</summary>
    [Fact]
    public void Without_gas_the_liquid_remains_and_without_liquid_the_gas()
    {
        Near.Relative(1.4e9, Compliance.WithGasPa(1.4e9, 0, 1e6), 1e-15);
        Near.Relative(1.4e6, Compliance.WithGasPa(1.4e9, 1, 1e6, 1.4), 1e-15);
        Near.Relative(0.01, Compliance.GasFractionAt(0.01, Compliance.AtmospherePa, 1.4), 1e-14);
        Assert.True(Compliance.GasFractionAt(0.01, 1e7, 1.4) > Compliance.GasFractionAt(0.01, 1e7));
    }

    /// <summary>
    /// Derived from eq. 2.55's own premise: the modulus is -V·dP/dV of liquid and gas together, by a difference; sudden gas
    /// (kappa 1.4) too.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(1.4)]
    public void The_modulus_with_gas_is_the_slope_of_pressure_over_volume(double kappa)
    {
        const double liquid = 1.4e9, pressure = 1e6, step = 1e2;
        double Volume(double at) => (0.99 * Math.Exp(-(at - pressure) / liquid)) + (0.01 * Math.Pow(Compliance.AtmospherePa / at, 1 / kappa));
        double slope = -Volume(pressure) * 2 * step / (Volume(pressure + step) - Volume(pressure - step));

        Near.Relative(slope, Compliance.WithEntrainedGasPa(liquid, 0.01, pressure, kappa), 1e-6);
    }

    /// <summary>
    /// Source: Merritt, Hydraulic Control Systems, eq. 4-49: D/t 10, 1 % gas, Bl 250 000 psi, Bg 500 psi (read), E 30e6 psi
    /// (from memory): 1/Be = D/(t·E) + 1/Bl + 0.01/Bg, so 41 096 psi = 283 MPa (derived).
    /// </summary>
    [Fact]
    public void Wall_liquid_and_gas_together_are_as_soft_as_Merritt_has_it_with_E_from_memory()
    {
        double together = Compliance.TogetherPa(Compliance.ThinWallPa(10, 1, 30e6 * Psi), 250_000 * Psi, 500 * Psi / 0.01);

        Near.Figure(41_096, 0.5, together / Psi);
        Near.Figure(283, 0.5, together / 1e6);
    }

    /// <summary>
    /// Source: thick wall 1/Bc = (2/E)·[(do² + di²)/(do² - di²) + nu] and thin wall t·E/d, both from memory; derived: steel, di 4,
    /// do 6 mm, E 206 GPa, nu 0.3: 35.52 GPa thick, 51.5 GPa thin.
    /// </summary>
    [Fact]
    public void A_steel_pipe_is_as_stiff_as_derived_by_the_forms_from_memory()
    {
        Near.Figure(35.52, 0.005, Compliance.ThickWallPa(4e-3, 6e-3, 206e9, 0.3) / 1e9);
        Near.Figure(51.5, 0.05, Compliance.ThinWallPa(4e-3, 1e-3, 206e9) / 1e9);
    }

    /// <summary>Derived: C = V/B; 5 m of 6 mm bore are 141.37 cm3: 0.0707 cm3/bar at 0.2 GPa, 0.0283 at 0.5 GPa.</summary>
    [Theory]
    [InlineData(0.2, 0.0707)]
    [InlineData(0.5, 0.0283)]
    public void A_filled_line_gives_way_by_volume_over_modulus(double gPa, double printedCm3PerBar)
    {
        double volume = Math.PI * 3e-3 * 3e-3 * 5;
        Near.Figure(141.37, 0.005, volume * 1e6);
        Near.Figure(printedCm3PerBar, 0.00005, Compliance.OfVolumeM3PerPa(volume, gPa * 1e9) * 1e6 * 1e5);
    }

    /// <summary>
    /// Source: mineral hydraulic oil has a bulk modulus of 1.5 to 2.0 GPa; for grease no neutral figure was found, so the base
    /// oil's is used and labelled an assumption. Read from the files that plants use.
    /// </summary>
    [Fact]
    public void The_lubricant_files_hold_the_modulus_of_mineral_oil_and_call_it_assumed() => Assert.All(LubricantFiles.All, lubricant =>
    {
        Assert.InRange(lubricant.BulkModulusPa.Value, 1.5e9, 2.0e9);
        Assert.Contains(lubricant.Assumptions(), value => value.Name == "bulk modulus");
    });

    [Fact]
    public void What_gives_no_modulus_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Compliance.GasFractionAt(1, 1e5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Compliance.GasFractionAt(0.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Compliance.WithGasPa(1e9, 1.1, 1e5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Compliance.ThickWallPa(6e-3, 4e-3, 1e9, 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Compliance.TogetherPa(1e9, 0));
    }
}
