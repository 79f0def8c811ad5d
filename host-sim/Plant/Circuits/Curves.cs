using System;

namespace LubeController.Plant.Circuits;

/// <summary>Curves of common parts, from few figures. Shapes are assumed; the figures given are met exactly.</summary>
public static class Curves
{
    // What a blocked junction lets through: enough that nothing behind it floats, too little to read.
    private const double BlockedS = 1e-9;

    /// <summary>A diode: blocked below its drop, then a straight line.</summary>
    /// <param name="dropV">Forward drop, V, above 0.</param>
    /// <param name="onOhms">Resistance beyond the drop, above 0.</param>
    public static PiecewiseCurve Diode(double dropV, double onOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dropV);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(onOhms);
        double cornerA = dropV * BlockedS;
        return new(new CurvePoint(0, 0), new CurvePoint(dropV, cornerA), new CurvePoint(dropV + 1, cornerA + (1 / onOhms)));
    }

    /// <summary>A clamp that conducts beyond a voltage either way, as a suppressor diode across a coil does.</summary>
    /// <param name="clampV">V, above 0.</param>
    /// <param name="onOhms">Resistance beyond it, above 0.</param>
    public static PiecewiseCurve Clamp(double clampV, double onOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(clampV);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(onOhms);
        double cornerA = clampV * BlockedS;
        double beyondA = cornerA + (1 / onOhms);
        return new(new CurvePoint(-clampV - 1, -beyondA), new CurvePoint(-clampV, -cornerA), new CurvePoint(clampV, cornerA), new CurvePoint(clampV + 1, beyondA));
    }

    /// <summary>
    /// A filament lamp: rated current at rated voltage, a tenth of its hot resistance when cold, in between near the power
    /// law I = V^0.55 of tungsten (from memory); the same either way round.
    /// </summary>
    /// <param name="ratedV">V, above 0.</param>
    /// <param name="ratedW">W, above 0.</param>
    public static PiecewiseCurve Lamp(double ratedV, double ratedW)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedV);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedW);
        double ratedA = ratedW / ratedV;
        CurvePoint At(double v, double i) => new(v * ratedV, i * ratedA);
        return new(At(-1, -1), At(-0.5, -0.68), At(-0.1, -0.28), At(-0.01, -0.1), At(0.01, 0.1), At(0.1, 0.28), At(0.5, 0.68), At(1, 1));
    }
}
