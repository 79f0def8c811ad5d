using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// Entrained air: at a gauge pressure p it has given up 1 - (patm/(p + patm))^(1/kappa) of its volume at atmosphere.
/// Isothermal (kappa 1) by formula, else by table.
/// </summary>
internal sealed class Gas
{
    internal const double AtmospherePa = 101_325;

    private readonly FlowTable? _table;

    internal Gas(double exponent)
    {
        if (exponent == 1)
            return;
        _table = new FlowTable();
        _table.Fill(new GasLaw(exponent));
    }

    /// <summary>Whether pressures follow from stored volume by a square root.</summary>
    internal bool IsIsothermal => _table is null;

    /// <summary>The slope of the fraction given up at atmospheric pressure, 1/Pa.</summary>
    internal double SlopeAtAtmosphere => _table?.SlopeAtOnset ?? 1 / AtmospherePa;

    /// <summary>The fraction given up, and its slope, 1/Pa.</summary>
    internal double GivenUp(double pressurePa, out double slope)
    {
        if (_table is not null && pressurePa > 0)
            return _table.Flow(pressurePa, out slope);
        if (_table is not null)
        {
            slope = SlopeAtAtmosphere;
            return slope * pressurePa;
        }

        double absolute = pressurePa + AtmospherePa;
        slope = AtmospherePa / (absolute * absolute);
        return pressurePa / absolute;
    }

    /// <summary>
    /// The pressure at which a volume holds so much beyond what it holds at atmosphere, Pa: C p + A u(p) = stored.
    /// Isothermal: the positive root of a quadratic, in the form that does not cancel.
    /// </summary>
    /// <param name="stored">What it holds, m3.</param>
    /// <param name="air">A, its air, m3 at atmosphere.</param>
    /// <param name="compliance">C, of lubricant and wall, m3/Pa.</param>
    /// <param name="guess">A pressure nearby, Pa.</param>
    internal double PressurePa(double stored, double air, double compliance, double guess)
    {
        if (air <= 0)
            return stored / compliance;
        if (IsIsothermal)
        {
            double b = (compliance * AtmospherePa) + air - stored;
            double root = Math.Sqrt((b * b) + (4 * compliance * stored * AtmospherePa));
            return b >= 0 ? 2 * stored * AtmospherePa / (b + root) : (root - b) / (2 * compliance);
        }

        return stored <= 0 ? stored / (compliance + (air * SlopeAtAtmosphere)) : PressureByNewton(stored, air, compliance, guess);
    }

    // What is held rises ever slower: from above Newton's step may pass the root, and even 0, but from below it never does.
    private double PressureByNewton(double stored, double air, double compliance, double guess)
    {
        double pressure = Math.Max(0, guess);
        for (int i = 0; i < 60; i++)
        {
            double off = (compliance * pressure) + (air * GivenUp(pressure, out double slope)) - stored;
            double next = Math.Max(0, pressure - (off / (compliance + (air * slope))));
            double step = next - pressure;
            pressure = next;
            if (Math.Abs(step) <= 1e-13 * pressure)
                break;
        }

        return pressure;
    }
}
