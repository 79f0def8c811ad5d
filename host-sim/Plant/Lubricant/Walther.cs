using System;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// Viscosity of an oil over temperature by ASTM D341 (Walther): log log(nu + 0.7) = A - B·log T, decimal logarithms, nu in
/// mm²/s, T in K. Meant for 2 mm²/s and more; below, the standard adds terms that are left out here.
/// </summary>
/// <param name="A">The constant.</param>
/// <param name="B">The slope, 0 or more.</param>
public readonly record struct Walther(double A, double B)
{
    private const double Offset = 0.7;
    private const double Mm2PerM2 = 1e6;

    /// <summary>The line through two points.</summary>
    /// <param name="firstTemperatureK">A temperature, K.</param>
    /// <param name="firstM2PerS">Kinematic viscosity there, m2/s, above 0.3e-6.</param>
    /// <param name="secondTemperatureK">Another temperature, K.</param>
    /// <param name="secondM2PerS">Kinematic viscosity there, m2/s, above 0.3e-6.</param>
    /// <exception cref="ArgumentOutOfRangeException">A viscosity has no such logarithm, or the temperatures are the same.</exception>
    public static Walther Through(double firstTemperatureK, double firstM2PerS, double secondTemperatureK, double secondM2PerS)
    {
        ArgumentOutOfRangeException.ThrowIfEqual(firstTemperatureK, secondTemperatureK);
        double slope = (LogLog(firstM2PerS) - LogLog(secondM2PerS)) / (Math.Log10(secondTemperatureK) - Math.Log10(firstTemperatureK));
        return WithSlope(firstTemperatureK, firstM2PerS, slope);
    }

    /// <summary>The line through one point with a given slope.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity has no such logarithm.</exception>
    public static Walther WithSlope(double temperatureK, double viscosityM2PerS, double slope) =>
        new(LogLog(viscosityM2PerS) + (slope * Math.Log10(temperatureK)), slope);

    /// <summary>Kinematic viscosity, m2/s, at a temperature in K.</summary>
    public double ViscosityM2PerS(double temperatureK) => (Math.Pow(10, Log(temperatureK)) - Offset) / Mm2PerM2;

    /// <summary>Its derivative by temperature, m2/(s·K).</summary>
    public double SlopeM2PerSK(double temperatureK)
    {
        double log = Log(temperatureK);
        return -Math.Pow(10, log) / Mm2PerM2 * Math.Log(10) * log * B / temperatureK;
    }

    private static double LogLog(double viscosityM2PerS)
    {
        double shifted = (viscosityM2PerS * Mm2PerM2) + Offset;
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(shifted, 1, nameof(viscosityM2PerS));
        return Math.Log10(Math.Log10(shifted));
    }

    private double Log(double temperatureK) => Math.Pow(10, A - (B * Math.Log10(temperatureK)));
}
