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
}
