using System;
using System.Collections.Generic;

namespace LubeController.Plant.Faults;

/// <summary>
/// One fault, whatever it is a fault of: what a person reads of it, the part that can have it, its numbers, what it changes and
/// what healing brings back. Listing, schema, documentation and runs are made from it; there is one object of each.
/// </summary>
/// <param name="part">The part that can have it.</param>
public abstract class Fault(FaultPart part)
{
    /// <summary>The kind of part that can have it.</summary>
    public FaultPart Part { get; } = part ?? throw new ArgumentNullException(nameof(part));

    /// <summary>Lower-case name, for instance <c>outlet-blocked</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The part that changes, in words, for instance <c>the pump's suction</c>.</summary>
    public required string Place { get; init; }

    /// <summary>How it fails.</summary>
    public required FaultManner Manner { get; init; }

    /// <summary>What changes physically: one sentence.</summary>
    public required string Effect { get; init; }

    /// <summary>What a person at the machine would notice: one sentence.</summary>
    public required string Noticed { get; init; }

    /// <summary>What must happen while it is in place for it to count as having taken effect; goes on after "it needs".</summary>
    public required string Needs { get; init; }

    /// <summary>Its magnitude, or null if it has none.</summary>
    public FaultParameter? Parameter { get; init; }

    /// <summary>A second number, or null.</summary>
    public FaultParameter? Second { get; init; }

    /// <summary>What healing brings back.</summary>
    public FaultHealing Healing { get; init; }

    /// <summary>The same in one sentence.</summary>
    public string HealingNote { get; init; } = "Works again at once when repaired.";

    /// <summary>Whether the magnitude may grow from its harmless value instead of coming at once.</summary>
    public bool Gradual => Parameter is { Harmless: not null };

    /// <summary>The magnitude and the second number, as far as there are any.</summary>
    public IReadOnlyList<FaultParameter> Parameters =>
        Parameter is not { } first ? [] : Second is { } second ? [first, second] : [first];

    /// <summary>Its name.</summary>
    public override string ToString() => Name;

    /// <summary>Finds the part that a name names; nothing changes yet.</summary>
    /// <param name="host">What has the part.</param>
    /// <param name="part">One of the host's <see cref="FaultHost.PartsOf"/>.</param>
    protected internal abstract ActiveFault On(FaultHost host, string part);
}
