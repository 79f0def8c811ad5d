namespace LubeController.Plant.Hydraulics;

/// <summary>
/// What fraction of its volume at atmosphere entrained air gives up to the lubricant at a gauge pressure: isothermal, so
/// p/(p + 101 325 Pa) at the knots, straight between them.
/// </summary>
internal static class AirTable
{
    internal const double AtmospherePa = 101_325;

    private static readonly double[] PressurePa =
    [
        0, 1e4, 2e4, 3.5e4, 5e4, 7.5e4, 1e5, 1.5e5, 2e5, 3e5, 4e5, 6e5, 8e5, 1.2e6, 1.6e6, 2.4e6, 3.2e6, 4.8e6, 6.4e6,
        1e7, 1.5e7, 2.5e7, 4e7, 6e7, 1e8,
    ];

    internal static int Knots => PressurePa.Length;

    internal static double Knot(int index) => PressurePa[index];

    internal static double AtKnot(int index) => PressurePa[index] / (PressurePa[index] + AtmospherePa);

    /// <summary>Slope of a piece, 1/Pa; piece k lies between knots k and k+1.</summary>
    internal static double Slope(int piece) =>
        (AtKnot(piece + 1) - AtKnot(piece)) / (PressurePa[piece + 1] - PressurePa[piece]);

    /// <summary>The fraction given up at a pressure.</summary>
    internal static double GivenUp(double pressurePa)
    {
        int piece = PieceAbove(pressurePa);
        return AtKnot(piece) + ((pressurePa - PressurePa[piece]) * Slope(piece));
    }

    /// <summary>The piece in which a rising pressure moves.</summary>
    internal static int PieceAbove(double pressurePa)
    {
        int piece = PressurePa.Length - 2;
        while (piece > 0 && pressurePa < PressurePa[piece])
            piece--;
        return piece;
    }

    /// <summary>The piece in which a falling pressure moves.</summary>
    internal static int PieceBelow(double pressurePa)
    {
        int piece = PressurePa.Length - 2;
        while (piece > 0 && pressurePa <= PressurePa[piece])
            piece--;
        return piece;
    }
}
