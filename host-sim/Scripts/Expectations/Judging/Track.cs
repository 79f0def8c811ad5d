using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Scripts.Expectations.Curves;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>One predicate over one window and on to the end of the run.</summary>
internal sealed class Track
{
    private Track(Curve truth, Curve? margin, UnitFamily? family, string unit)
    {
        Truth = truth;
        Margin = margin;
        Family = family;
        Unit = unit;
    }

    /// <summary>+1 where it is true, -1 where it is false.</summary>
    public Curve Truth { get; }

    /// <summary>Its margin in SI units, or null where its margin is a time.</summary>
    public Curve? Margin { get; }

    /// <summary>Quantity of <see cref="Margin"/>.</summary>
    public UnitFamily? Family { get; }

    /// <summary>Unit in which its writer thinks.</summary>
    public string Unit { get; }

    /// <summary>Follows a predicate; null where one of its signals has no value at the first instant.</summary>
    public static Track? Of(Predicate predicate, Trace trace, double fromUs, double endUs)
    {
        Curve? truth = Fold(predicate, comparison => TruthOf(comparison, trace, fromUs, endUs));
        if (truth == null)
            return null;
        UnitFamily? family = predicate.MarginFamily;
        Curve? margin = family == null ? null : Fold(predicate, comparison => MarginOf(comparison, trace, fromUs, endUs));
        return new Track(truth, margin, family, predicate.Comparisons.First().Unit);
    }

    /// <summary>The opposite predicate.</summary>
    public Track Negated() => new(Truth.Negated(), Margin?.Negated(), Family, Unit);

    /// <summary>A margin of this predicate from an SI value.</summary>
    public Margin MarginOf(double si) => Expectations.Margin.OfSi(si, Family!, Unit);

    private static Curve? Fold(Predicate predicate, Func<Comparison, Curve?> curveOf)
    {
        if (predicate is not Joined joined)
            return curveOf((Comparison)predicate);
        var parts = new List<Curve>();
        foreach (Predicate part in joined.Parts)
        {
            if (Fold(part, curveOf) is not { } curve)
                return null;
            parts.Add(curve);
        }

        return parts.Aggregate(joined.All ? CurveJoin.Lower : CurveJoin.Higher);
    }

    private static Curve? MarginOf(Comparison comparison, Trace trace, double fromUs, double endUs) =>
        trace.Find(comparison.Signal.Name) is { } signal ? Curve.Of(signal, fromUs, endUs, comparison.MarginOf) : null;

    private static Curve? TruthOf(Comparison comparison, Trace trace, double fromUs, double endUs) =>
        MarginOf(comparison, trace, fromUs, endUs) is { } margin ? TruthCurve.Of(margin, comparison.IsStrict) : null;
}
