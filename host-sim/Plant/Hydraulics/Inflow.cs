namespace LubeController.Plant.Hydraulics;

/// <summary>
/// What the pump brings into the line during one step: a geometric flow less slip, never backwards; a share of it is air,
/// which leaves the element only as far as its dead volume lets it be compressed.
/// </summary>
/// <param name="FlowM3PerS">Drawn, lubricant and air, m3/s.</param>
/// <param name="SlipM3PerSPa">Slip per pressure at the outlet, m3/s per Pa.</param>
/// <param name="AirShare">Air in what is drawn, 0 to 1.</param>
/// <param name="DeadVolume">Volume left at the end of the stroke, fraction of the stroke.</param>
internal readonly record struct Inflow(double FlowM3PerS, double SlipM3PerSPa, double AirShare, double DeadVolume)
{
    /// <summary>What enters at a pressure, lubricant and air at atmosphere, m3/s, and its slope.</summary>
    internal double At(double pressurePa, out double slope)
    {
        slope = 0;
        if (FlowM3PerS <= 0)
            return 0;
        double lost = SlipM3PerSPa * pressurePa;
        double whole = FlowM3PerS - lost;
        if (whole <= 0)
            return 0;
        slope = -SlipM3PerSPa;
        double fills = Fills(pressurePa, out double fillsSlope);
        slope = (slope * fills) + (whole * fillsSlope);
        return whole * fills;
    }

    // What stays in the dead volume at the stroke's end is the same mixture, its air compressed. Let down to atmosphere it
    // takes the place of so much of the next stroke: D a (1 - r)/(1 - a + a r), r the air's remaining part of its volume.
    // Of nothing but air that is D p/patm; air that is finely spread in lubricant hardly counts.
    private double Fills(double pressurePa, out double slope)
    {
        slope = 0;
        if (AirShare == 0)
            return 1;
        double remains = Gas.AtmospherePa / (pressurePa + Gas.AtmospherePa);
        double mixture = 1 - AirShare + (AirShare * remains);
        double fills = 1 - (DeadVolume * AirShare * (1 - remains) / mixture);
        if (fills <= 0)
            return 0;
        slope = -DeadVolume * AirShare * remains * remains / (Gas.AtmospherePa * mixture * mixture);
        return fills;
    }
}
