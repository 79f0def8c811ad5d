using System;
using LubeController.Plant.Circuits;

namespace LubeController.Plant.Inputs;

/// <summary>
/// A current over voltage for each input type. Assumed: the standard bounds a region and leaves the curve within it to
/// the maker. Type 1 is a plain resistance; types 2 and 3 limit their current above the on minimum.
/// </summary>
public static class InputCurves
{
    private static readonly PiecewiseCurve Type1Curve = new(new CurvePoint(0, 0), new CurvePoint(24, 4e-3));

    private static readonly PiecewiseCurve Type2Curve = new(
        new CurvePoint(-1, -1e-6), new CurvePoint(0, 0), new CurvePoint(10.5, 6.3e-3), new CurvePoint(30, 8e-3));

    private static readonly PiecewiseCurve Type3Curve = new(
        new CurvePoint(-1, -1e-6), new CurvePoint(0, 0), new CurvePoint(10.5, 2.3e-3), new CurvePoint(30, 3e-3));

    /// <summary>The curve of a type.</summary>
    public static PiecewiseCurve Of(InputType type) => type switch
    {
        InputType.Type1 => Type1Curve,
        InputType.Type2 => Type2Curve,
        InputType.Type3 => Type3Curve,
        _ => throw new ArgumentOutOfRangeException(nameof(type), type, "type 1, 2 or 3"),
    };
}
