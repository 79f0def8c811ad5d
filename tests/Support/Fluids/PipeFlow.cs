using System;
using LubeController.Plant.Lubricant;

namespace LubeController.Tests.Support.Fluids;

/// <summary>
/// Steady laminar flow through a round pipe, in closed form. Wall shear stress tau_w = dP·R/(2L); a fluid with a yield
/// stress stands still up to tau_w = tau_y. These closed forms check <see cref="LubricantProperties"/>, which holds the tables that a
/// running plant asks.
/// </summary>
public static class PipeFlow
{
    private const int MostSteps = 200;

    /// <summary>Wall shear stress, Pa.</summary>
    public static double WallShearStressPa(double dropPa, double lengthM, double radiusM) => dropPa * radiusM / (2 * lengthM);

    /// <summary>
    /// The drop above which a fluid with a yield stress begins to move, Pa: 4·L·tau_y/D, which is tau_w = tau_y.
    /// </summary>
    public static double StartUpDropPa(double lengthM, double radiusM, double yieldStressPa) => 2 * lengthM * yieldStressPa / radiusM;

    /// <summary>Pressure drop of a Newtonian fluid, Pa: Hagen-Poiseuille, 8·mu·L·Q/(pi·R^4).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length or the viscosity is not positive, or the flow is negative.</exception>
    public static double HagenPoiseuilleDropPa(double flowM3PerS, double lengthM, double radiusM, double viscosityPaS)
    {
        Check(flowM3PerS, lengthM, radiusM, 0, viscosityPaS, 1);
        return 8 * viscosityPaS * lengthM * flowM3PerS / (Math.PI * radiusM * radiusM * radiusM * radiusM);
    }

    /// <summary>Flow of a Newtonian fluid, m3/s: Hagen-Poiseuille, pi·R^4·dP/(8·mu·L).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length or the viscosity is not positive, or the drop is negative.</exception>
    public static double HagenPoiseuilleFlowM3PerS(double dropPa, double lengthM, double radiusM, double viscosityPaS)
    {
        Check(dropPa, lengthM, radiusM, 0, viscosityPaS, 1);
        return Math.PI * radiusM * radiusM * radiusM * radiusM * dropPa / (8 * viscosityPaS * lengthM);
    }

    /// <summary>
    /// Flow of a Bingham fluid, m3/s: Buckingham-Reiner, the Newtonian flow × (1 - 4X/3 + X^4/3), X = tau_y/tau_w, written
    /// as (1-X)²(3+2X+X²)/3 because the plain bracket loses every digit as X goes to 1.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A length or the viscosity is not positive, the drop or the yield stress negative.</exception>
    public static double BinghamFlowM3PerS(double dropPa, double lengthM, double radiusM, double yieldStressPa, double plasticViscosityPaS)
    {
        Check(dropPa, lengthM, radiusM, yieldStressPa, plasticViscosityPaS, 1);
        double wall = WallShearStressPa(dropPa, lengthM, radiusM);
        if (wall <= yieldStressPa)
            return 0;
        double x = yieldStressPa / wall;
        double free = (wall - yieldStressPa) / wall;
        return HagenPoiseuilleFlowM3PerS(dropPa, lengthM, radiusM, plasticViscosityPaS) * free * free * (3 + (2 * x) + (x * x)) / 3;
    }

    /// <summary>
    /// Flow of a Herschel-Bulkley fluid, tau = tau_y + K·(shear rate)^n, m3/s:
    /// pi·R³·n·(tau_w/K)^(1/n)·(1-X)^((n+1)/n)·[(1-X)²/(3n+1) + 2X(1-X)/(2n+1) + X²/(n+1)], X = tau_y/tau_w. With n = 1 it
    /// is the Bingham flow, without yield stress that of a power-law fluid.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A length, the consistency or the index is not positive, the drop or the yield stress negative.</exception>
    public static double HerschelBulkleyFlowM3PerS(
        double dropPa, double lengthM, double radiusM, double yieldStressPa, double consistencyPaSn, double flowIndex)
    {
        Check(dropPa, lengthM, radiusM, yieldStressPa, consistencyPaSn, flowIndex);
        double wall = WallShearStressPa(dropPa, lengthM, radiusM);
        return wall <= yieldStressPa ? 0
            : FlowAtExcess(wall - yieldStressPa, radiusM, yieldStressPa, consistencyPaSn, flowIndex);
    }

    /// <summary>
    /// The drop that drives a flow of a Herschel-Bulkley fluid, Pa; for no flow the start-up drop. Found by Newton's
    /// method on logarithms, kept within a bracket that shrinks at every step.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A length, the consistency or the index is not positive, the flow or the yield stress negative.</exception>
    public static double HerschelBulkleyDropPa(
        double flowM3PerS, double lengthM, double radiusM, double yieldStressPa, double consistencyPaSn, double flowIndex)
    {
        Check(flowM3PerS, lengthM, radiusM, yieldStressPa, consistencyPaSn, flowIndex);
        if (flowM3PerS == 0)
            return StartUpDropPa(lengthM, radiusM, yieldStressPa);
        double excess = ExcessFor(flowM3PerS, radiusM, yieldStressPa, consistencyPaSn, flowIndex);
        return 2 * lengthM * (yieldStressPa + excess) / radiusM;
    }

    /// <summary>The drop that drives a flow of a Bingham fluid, Pa; for no flow the start-up drop.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length or the viscosity is not positive, the flow or the yield stress negative.</exception>
    public static double BinghamDropPa(double flowM3PerS, double lengthM, double radiusM, double yieldStressPa, double plasticViscosityPaS) =>
        HerschelBulkleyDropPa(flowM3PerS, lengthM, radiusM, yieldStressPa, plasticViscosityPaS, 1);

    // By what the wall stress exceeds the yield stress: near the start the stresses themselves differ in their last digits only.
    private static double FlowAtExcess(double excessPa, double radiusM, double yieldStressPa, double consistencyPaSn, double n)
    {
        double wall = yieldStressPa + excessPa;
        double x = yieldStressPa / wall;
        double free = excessPa / wall;
        double bracket = (free * free / ((3 * n) + 1)) + (2 * x * free / ((2 * n) + 1)) + (x * x / (n + 1));
        return Math.PI * radiusM * radiusM * radiusM * n
            * Math.Pow(wall / consistencyPaSn, 1 / n) * Math.Pow(free, (n + 1) / n) * bracket;
    }

    private static double ExcessFor(double flowM3PerS, double radiusM, double yieldStressPa, double consistencyPaSn, double n)
    {
        double Flow(double excess) => FlowAtExcess(excess, radiusM, yieldStressPa, consistencyPaSn, n);

        // The yield stress only hinders, so the power-law fluid's wall stress is too little excess for the fluid at rest and
        // enough excess never lies far above it; doubling finds both ends.
        double low = consistencyPaSn * Math.Pow(flowM3PerS * ((3 * n) + 1) / (Math.PI * radiusM * radiusM * radiusM * n), n);
        double high = low;
        for (int step = 0; step < MostSteps && Flow(high) < flowM3PerS; step++)
            high *= 2;
        for (int step = 0; step < MostSteps && Flow(low) > flowM3PerS; step++)
            low /= 2;
        double excess = high;
        for (int step = 0; step < MostSteps && low < high; step++)
        {
            double flow = Flow(excess);
            if (flow < flowM3PerS)
                low = excess;
            else
                high = excess;
            double next = excess * Math.Exp(Math.Log(flowM3PerS / flow) * flow / (excess * SlopeAtExcess(excess, flow, radiusM, yieldStressPa, consistencyPaSn, n)));
            if (!(next > low && next < high))
                next = Math.Sqrt(low) * Math.Sqrt(high);
            if (Math.Abs(next - excess) <= 1e-16 * excess || !(next > low && next < high))
                return next;
            excess = next;
        }

        return excess;
    }

    // Q = (pi·R³/tau_w³)·integral of tau²·(shear rate) from 0 to tau_w, so dQ/dtau_w = (pi·R³·(shear rate at the wall) - 3Q)/tau_w.
    private static double SlopeAtExcess(double excessPa, double flowM3PerS, double radiusM, double yieldStressPa, double consistencyPaSn, double n) =>
        ((Math.PI * radiusM * radiusM * radiusM * Math.Pow(excessPa / consistencyPaSn, 1 / n)) - (3 * flowM3PerS)) / (yieldStressPa + excessPa);

    private static void Check(double driven, double lengthM, double radiusM, double yieldStressPa, double viscosity, double index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(driven);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lengthM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusM);
        ArgumentOutOfRangeException.ThrowIfNegative(yieldStressPa);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(viscosity);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(index);
    }
}
