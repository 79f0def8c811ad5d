using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Scripts.Signals;

namespace LubeController.Scripts.Predicates;

/// <summary>Something that is true or false at every instant of a run. Immutable.</summary>
public abstract record Predicate
{
    /// <summary>The sentence; never null.</summary>
    public abstract string Text { get; }

    /// <summary>The comparisons it is made of, in order of writing.</summary>
    public abstract IEnumerable<Comparison> Comparisons { get; }

    /// <summary>Whether only signals that keep their value between points occur, so that a step may wait for it.</summary>
    public bool IsDiscrete => Comparisons.All(comparison => comparison.Signal.IsDiscrete);

    /// <summary>
    /// The quantity of its margin where all comparisons are of one; null where they are of several, or where a word is
    /// compared: then the margin is a time.
    /// </summary>
    public UnitFamily? MarginFamily
    {
        get
        {
            Comparison first = Comparisons.First();
            return Comparisons.All(comparison => !comparison.Signal.IsWord && ReferenceEquals(comparison.Family, first.Family)) ? first.Family : null;
        }
    }

    /// <summary>Whether it is true for the values at one instant.</summary>
    /// <param name="valueOf">The SI value of a signal by name; NaN where there is none, which makes no comparison true.</param>
    public abstract bool IsTrue(Func<string, double> valueOf);

    /// <inheritdoc/>
    public sealed override string ToString() => Text;
}

/// <summary>One comparison of a signal with a constant.</summary>
/// <param name="Signal">The signal.</param>
/// <param name="Relation">How it is compared.</param>
/// <param name="Threshold">The constant in the signal's SI unit; the code of a word.</param>
/// <param name="Unit">The unit its writer chose, in which margins are told.</param>
/// <param name="Sentence">The sentence as written.</param>
public sealed record Comparison(SignalInfo Signal, Relation Relation, double Threshold, string Unit, string Sentence) : Predicate
{
    /// <inheritdoc/>
    public override string Text => Sentence;

    /// <inheritdoc/>
    public override IEnumerable<Comparison> Comparisons => [this];

    /// <summary>What the signal is a quantity of.</summary>
    public UnitFamily Family => Signal.Family;

    /// <summary>Whether equality with the constant is not enough.</summary>
    public bool IsStrict => Relation is Relation.Less or Relation.Greater or Relation.NotEqual;

    /// <summary>How far a value is from failing, in SI units: positive where true, negative where false.</summary>
    public double MarginOf(double value) => Relation switch
    {
        Relation.Less or Relation.LessOrEqual => Threshold - value,
        Relation.Greater or Relation.GreaterOrEqual => value - Threshold,
        Relation.Equal => -Math.Abs(value - Threshold),
        _ => Math.Abs(value - Threshold),
    };

    /// <inheritdoc/>
    public override bool IsTrue(Func<string, double> valueOf)
    {
        double margin = MarginOf(valueOf(Signal.Name));
        return IsStrict ? margin > 0.0 : margin >= 0.0;
    }
}

/// <summary>Several predicates joined by <c>and</c>, or by <c>or</c>.</summary>
/// <param name="Parts">Two or more.</param>
/// <param name="All">True for <c>and</c>, false for <c>or</c>.</param>
public sealed record Joined(IReadOnlyList<Predicate> Parts, bool All) : Predicate
{
    /// <inheritdoc/>
    public override string Text => string.Join(All ? " and " : " or ", Parts.Select(part => part.Text));

    /// <inheritdoc/>
    public override IEnumerable<Comparison> Comparisons => Parts.SelectMany(part => part.Comparisons);

    /// <inheritdoc/>
    public override bool IsTrue(Func<string, double> valueOf) =>
        All ? Parts.All(part => part.IsTrue(valueOf)) : Parts.Any(part => part.IsTrue(valueOf));
}
