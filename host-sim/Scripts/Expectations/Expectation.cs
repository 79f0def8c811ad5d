using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations;

/// <summary>One thing a script demands of a run. Immutable.</summary>
public abstract record Expectation
{
    /// <summary>What its writer calls it; never null.</summary>
    public required string Name { get; init; }

    /// <summary>Where it is written.</summary>
    public required SourcePlace Place { get; init; }

    /// <summary>Where its window begins; null for the start of the run.</summary>
    public WindowEdge? From { get; init; }

    /// <summary>Where its window ends; null for the end of the run.</summary>
    public WindowEdge? To { get; init; }

    /// <summary>Longest time from the beginning of the window; null where only its end bounds it. Microseconds.</summary>
    public long? WithinUs { get; init; }

    /// <summary>What is demanded, as one sentence.</summary>
    public abstract string Sentence { get; }

    /// <summary>Every predicate that matters.</summary>
    public abstract IEnumerable<Predicate> Predicates { get; }

    /// <summary>The sentence with its window.</summary>
    public sealed override string ToString() => Sentence
        + (WithinUs is { } within ? $" within {TimeText.Of(within)}" : "")
        + (From != null ? $", from {From.Text}" : "")
        + (To != null ? $", to {To.Text}" : "");
}

/// <summary>A predicate is true all through the window, or, asked so, never true in it.</summary>
/// <param name="Predicate">The predicate.</param>
/// <param name="Never">Whether it must never be true.</param>
public sealed record AlwaysExpectation(Predicate Predicate, bool Never) : Expectation
{
    /// <inheritdoc/>
    public override string Sentence => (Never ? "never " : "always ") + Predicate.Text;

    /// <inheritdoc/>
    public override IEnumerable<Predicate> Predicates => [Predicate];
}

/// <summary>A predicate is true at some instant of the window.</summary>
/// <param name="Predicate">The predicate.</param>
public sealed record EventuallyExpectation(Predicate Predicate) : Expectation
{
    /// <inheritdoc/>
    public override string Sentence => "eventually " + Predicate.Text;

    /// <inheritdoc/>
    public override IEnumerable<Predicate> Predicates => [Predicate];
}

/// <summary>One predicate is true until another one is, and the other one becomes true within the window.</summary>
/// <param name="Hold">True up to that instant.</param>
/// <param name="Until">True at that instant.</param>
public sealed record UntilExpectation(Predicate Hold, Predicate Until) : Expectation
{
    /// <inheritdoc/>
    public override string Sentence => $"{Hold.Text} until {Until.Text}";

    /// <inheritdoc/>
    public override IEnumerable<Predicate> Predicates => [Hold, Until];
}

/// <summary>A predicate is true for a time without a break, somewhere in the window.</summary>
/// <param name="Predicate">The predicate.</param>
/// <param name="ForUs">The time, microseconds.</param>
public sealed record HoldsExpectation(Predicate Predicate, long ForUs) : Expectation
{
    /// <inheritdoc/>
    public override string Sentence => $"{Predicate.Text} for {TimeText.Of(ForUs)} without a break";

    /// <inheritdoc/>
    public override IEnumerable<Predicate> Predicates => [Predicate];
}

/// <summary>Predicates become true one after another; two may do so at one instant.</summary>
/// <param name="Order">Two or more, in order.</param>
public sealed record InOrderExpectation(IReadOnlyList<Predicate> Order) : Expectation
{
    /// <inheritdoc/>
    public override string Sentence => "in order: " + string.Join(", then ", Order.Select(predicate => predicate.Text));

    /// <inheritdoc/>
    public override IEnumerable<Predicate> Predicates => Order;
}
