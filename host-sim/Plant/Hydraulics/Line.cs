using LubeController.Plant.Description;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The line: at a gauge pressure p it holds V/B x p more lubricant than at atmosphere, and what its entrained air gives up.
/// The pressure moves in a straight line between events.
/// </summary>
internal sealed class Line
{
    private readonly double _compliance;

    internal Line(LineDescription description)
    {
        _compliance = description.VolumeM3 / description.BulkModulusPa;
        AirM3 = description.AirM3;
    }

    internal double PressurePa { get; private set; }

    internal double RatePaPerS { get; private set; }

    /// <summary>Air in the line, m3 at atmosphere.</summary>
    internal double AirM3 { get; private set; }

    /// <summary>Lubricant held beyond what the line holds at atmosphere, m3.</summary>
    internal double StoredM3(double pressurePa) =>
        AirM3 == 0 ? _compliance * pressurePa : (_compliance * pressurePa) + (AirM3 * AirTable.GivenUp(pressurePa));

    /// <summary>Sets the pressure's rate from the flow that stays in the line, m3/s.</summary>
    internal void Receive(double netM3PerS)
    {
        if (netM3PerS == 0)
        {
            RatePaPerS = 0;
            return;
        }

        double compliance = _compliance;
        if (AirM3 > 0)
        {
            int piece = netM3PerS > 0 ? AirTable.PieceAbove(PressurePa) : AirTable.PieceBelow(PressurePa);
            compliance += AirM3 * AirTable.Slope(piece);
        }

        RatePaPerS = netM3PerS / compliance;
    }

    internal void Advance(double seconds) => PressurePa += RatePaPerS * seconds;

    /// <summary>Puts the pressure exactly where an event was computed to lie, or where a part changed it at once.</summary>
    internal void Place(double pressurePa) => PressurePa = pressurePa;

    /// <summary>Where a moving pressure next changes its rate by the line alone: a knot of the air's curve, or atmosphere.</summary>
    internal double NextOwnTarget()
    {
        if (RatePaPerS > 0)
            return AirM3 > 0 ? AirTable.Knot(AirTable.PieceAbove(PressurePa) + 1) : double.PositiveInfinity;
        return AirM3 > 0 ? AirTable.Knot(AirTable.PieceBelow(PressurePa)) : 0;
    }

    /// <summary>
    /// Changes the air. More air: the lubricant held stays and the pressure falls. Less: bled at standing pressure, and
    /// what the air had given up goes with it.
    /// </summary>
    /// <returns>Lubricant lost by bleeding, m3.</returns>
    internal double SetAir(double airM3)
    {
        double stored = StoredM3(PressurePa);
        bool bled = airM3 < AirM3;
        AirM3 = airM3;
        if (bled)
            return stored - StoredM3(PressurePa);
        PressurePa = PressureHolding(stored);
        return 0;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(PressurePa);
        print.Add(RatePaPerS);
        print.Add(AirM3);
    }

    private double PressureHolding(double storedM3)
    {
        if (AirM3 == 0)
            return storedM3 / _compliance;
        int piece = AirTable.Knots - 2;
        while (piece > 0 && storedM3 < StoredM3(AirTable.Knot(piece)))
            piece--;
        double from = AirTable.Knot(piece);
        return from + ((storedM3 - StoredM3(from)) / (_compliance + (AirM3 * AirTable.Slope(piece))));
    }
}
