namespace LubeController.Plant.Hydraulics;

/// <summary>
/// What the pump brings into the line during one step: a geometric flow less slip, never backwards; and of what it draws, a
/// share of air, which leaves the element only as far as its dead volume lets it be compressed.
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
        if (AirShare == 0)
            return whole;
        double passed = AirPassed(pressurePa);
        slope *= 1 - AirShare + (AirShare * passed);
        if (passed > 0)
            slope -= whole * AirShare * DeadVolume / Gas.AtmospherePa;
        return whole * (1 - AirShare + (AirShare * passed));
    }

    /// <summary>The part of what enters that is air.</summary>
    internal double AirPart(double pressurePa)
    {
        if (AirShare == 0)
            return 0;
        double air = AirShare * AirPassed(pressurePa);
        double all = 1 - AirShare + air;
        return all > 0 ? air / all : 0;
    }

    // At the stroke's end the air stands compressed in the dead volume; only what it held beyond that has left.
    private double AirPassed(double pressurePa)
    {
        double passed = 1 - (DeadVolume * pressurePa / Gas.AtmospherePa);
        return passed > 0 ? passed : 0;
    }
}
