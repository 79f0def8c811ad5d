using System;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Hydraulics;

/// <summary>A round tube, by the lubricant's own law at its present temperature.</summary>
internal readonly struct TubeLaw(LubricantProperties lubricant, double lengthM, double boreM) : IFlowLaw
{
    /// <inheritdoc/>
    public double StartPa => 4 * lengthM * lubricant.YieldStressPa / boreM;

    /// <inheritdoc/>
    public double FlowM3PerS(double dropPa) => dropPa > StartPa ? lubricant.TubeFlowM3PerS(dropPa, lengthM, boreM / 2) : 0;
}

/// <summary>A section's passages: limit x dp/(dp + loss), the loss in proportion to viscosity.</summary>
internal readonly struct PassageLaw(double limitM3PerS, double halfLimitLossPa) : IFlowLaw
{
    /// <inheritdoc/>
    public double StartPa => 0;

    /// <inheritdoc/>
    public double FlowM3PerS(double dropPa) => dropPa > 0 ? limitM3PerS * dropPa / (dropPa + halfLimitLossPa) : 0;
}

/// <summary>A section's passages and the outlet's line behind them: one flow, two drops.</summary>
internal readonly struct PassageAndTubeLaw(PassageLaw passage, TubeLaw tube) : IFlowLaw
{
    private const int MostHalvings = 200;

    /// <inheritdoc/>
    public double StartPa => tube.StartPa;

    // The drop over the tube at which both pass the same: the difference rises with it, so its root is bracketed. Secants
    // that keep the bracket (Illinois, from memory) reach rounding in some ten steps; where the tube would pass far more than
    // the passage they creep, and each third step halves the bracket instead.
    public double FlowM3PerS(double dropPa)
    {
        double low = tube.StartPa;
        double high = dropPa;
        if (!(high > low))
            return 0;
        double atLow = -passage.FlowM3PerS(high - low);
        double atHigh = tube.FlowM3PerS(high);
        for (int i = 0; i < MostHalvings && high - low > high * 1e-15; i++)
        {
            double at = high - (atHigh * (high - low) / (atHigh - atLow));
            if (i % 3 == 2 || !(at > low && at < high))
                at = low + ((high - low) / 2);
            double flow = tube.FlowM3PerS(at);
            double difference = flow - passage.FlowM3PerS(dropPa - at);
            if (Math.Abs(difference) <= flow * 1e-15)
                return flow;
            if (difference > 0)
            {
                high = at;
                atHigh = difference;
                atLow /= 2;
            }
            else
            {
                low = at;
                atLow = difference;
                atHigh /= 2;
            }
        }

        return tube.FlowM3PerS(low + ((high - low) / 2));
    }
}

/// <summary>What fraction of its volume at atmosphere gas gives up at a gauge pressure, for an exponent kappa.</summary>
internal readonly struct GasLaw(double exponent) : IFlowLaw
{
    /// <inheritdoc/>
    public double StartPa => 0;

    /// <inheritdoc/>
    public double FlowM3PerS(double dropPa) =>
        RoundedTable.Digits12(1 - Math.Pow(Gas.AtmospherePa / (dropPa + Gas.AtmospherePa), 1 / exponent));
}
