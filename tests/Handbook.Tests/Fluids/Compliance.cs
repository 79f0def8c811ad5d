using System;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>How a filled line gives way: bulk moduli of liquid, entrained gas and wall, in Pa. Pressures here are absolute.</summary>
public static class Compliance
{
    /// <summary>Standard atmosphere, Pa (ISO 2533).</summary>
    public const double AtmospherePa = 101_325;

    /// <summary>
    /// The part of the volume that gas takes at a pressure, of the part that it takes at atmosphere: the gas shrinks by
    /// P·V^kappa = constant, the liquid's own shrinking is left out.
    /// </summary>
    /// <param name="fractionAtAtmosphere">Gas over whole volume at atmosphere, 0 up to, not including, 1.</param>
    /// <param name="absolutePressurePa">Absolute pressure, Pa, above 0.</param>
    /// <param name="gasExponent">kappa: 1 slow (isothermal), 1.4 sudden (adiabatic, air).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double GasFractionAt(double fractionAtAtmosphere, double absolutePressurePa, double gasExponent = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fractionAtAtmosphere);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(fractionAtAtmosphere, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(absolutePressurePa);
        ArgumentOutOfRangeException.ThrowIfLessThan(gasExponent, 1);
        double ratio = AtmospherePa / absolutePressurePa;
        double gas = fractionAtAtmosphere * (gasExponent == 1 ? ratio : Math.Pow(ratio, 1 / gasExponent));
        return gas / (1 - fractionAtAtmosphere + gas);
    }

    /// <summary>
    /// Bulk modulus of a liquid with gas in it, Pa: kappa·P·Bo/(kappa·P·(1-a) + a·Bo) (Rabie, Fluid Power Engineering,
    /// eq. 2.55). The gas fraction a is that at the pressure P: see <see cref="GasFractionAt"/>. Put in unshrunk, the
    /// fraction at atmosphere makes the liquid far too soft.
    /// </summary>
    /// <param name="liquidBulkModulusPa">Bo, of the liquid alone, Pa, above 0.</param>
    /// <param name="gasFraction">a, gas over whole volume at the pressure, 0 to 1.</param>
    /// <param name="absolutePressurePa">P, absolute, Pa, above 0.</param>
    /// <param name="gasExponent">kappa, 1 to 1.4.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double WithGasPa(double liquidBulkModulusPa, double gasFraction, double absolutePressurePa, double gasExponent = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(liquidBulkModulusPa);
        ArgumentOutOfRangeException.ThrowIfNegative(gasFraction);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(gasFraction, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(absolutePressurePa);
        ArgumentOutOfRangeException.ThrowIfLessThan(gasExponent, 1);
        double gas = gasExponent * absolutePressurePa;
        return gas * liquidBulkModulusPa / ((gas * (1 - gasFraction)) + (gasFraction * liquidBulkModulusPa));
    }

    /// <summary>
    /// The same from the gas fraction at atmosphere, which is how it is quoted.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double WithEntrainedGasPa(double liquidBulkModulusPa, double fractionAtAtmosphere, double absolutePressurePa, double gasExponent = 1) =>
        WithGasPa(liquidBulkModulusPa, GasFractionAt(fractionAtAtmosphere, absolutePressurePa, gasExponent), absolutePressurePa, gasExponent);

    /// <summary>
    /// Modulus of a thick-walled pipe, Pa: 1/Bc = (2/E)·[(do² + di²)/(do² - di²) + nu] (Lamé; from memory).
    /// </summary>
    /// <param name="innerDiameterM">di, m, above 0.</param>
    /// <param name="outerDiameterM">do, m, above di.</param>
    /// <param name="elasticModulusPa">E of the wall, Pa, above 0.</param>
    /// <param name="poissonRatio">nu of the wall, 0 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double ThickWallPa(double innerDiameterM, double outerDiameterM, double elasticModulusPa, double poissonRatio)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(innerDiameterM);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(outerDiameterM, innerDiameterM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(elasticModulusPa);
        ArgumentOutOfRangeException.ThrowIfNegative(poissonRatio);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(poissonRatio, 0.5);
        double outer = outerDiameterM * outerDiameterM;
        double inner = innerDiameterM * innerDiameterM;
        return elasticModulusPa / (2 * (((outer + inner) / (outer - inner)) + poissonRatio));
    }

    /// <summary>Modulus of a thin-walled pipe, Pa: t·E/d (from memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive.</exception>
    public static double ThinWallPa(double diameterM, double wallThicknessM, double elasticModulusPa)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameterM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wallThicknessM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(elasticModulusPa);
        return wallThicknessM * elasticModulusPa / diameterM;
    }

    /// <summary>
    /// Modulus of parts that give way together, Pa: 1/B = sum of 1/Bi (as in Merritt, Hydraulic Control Systems, eq. 4-49,
    /// whose gas term is the gas's modulus over its part of the volume).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A modulus is not positive.</exception>
    public static double TogetherPa(params ReadOnlySpan<double> moduliPa)
    {
        double sum = 0;
        foreach (double modulusPa in moduliPa)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(modulusPa, nameof(moduliPa));
            sum += 1 / modulusPa;
        }

        return 1 / sum;
    }

    /// <summary>Compliance of a volume, m3/Pa: V/B.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The modulus is not positive.</exception>
    public static double OfVolumeM3PerPa(double volumeM3, double bulkModulusPa)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bulkModulusPa);
        return volumeM3 / bulkModulusPa;
    }

    /// <summary>Rise of pressure in a trapped volume that is warmed, Pa: B·(expansion)·(rise of temperature), the wall rigid.</summary>
    public static double TrappedRisePa(double bulkModulusPa, double expansionPerK, double riseK) => bulkModulusPa * expansionPerK * riseK;
}
