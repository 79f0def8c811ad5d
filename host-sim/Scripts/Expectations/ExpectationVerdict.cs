using System.Collections.Generic;

namespace LubeController.Scripts.Expectations;

/// <summary>What became of one expectation.</summary>
public sealed record ExpectationVerdict
{
    /// <summary>The expectation.</summary>
    public required Expectation Expectation { get; init; }

    /// <summary>What became of it.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Why, as one sentence.</summary>
    public required string Reason { get; init; }

    /// <summary>By how much; null where it was not exercised.</summary>
    public Margin? Margin { get; init; }

    /// <summary>Margins of single comparisons, each judged on its own, where together they would mix units.</summary>
    public IReadOnlyList<PartMargin> Parts { get; init; } = [];

    /// <summary>Beginning of the window, microseconds; NaN where it never began.</summary>
    public double FromUs { get; init; } = double.NaN;

    /// <summary>End of the window, microseconds; NaN where it never ended.</summary>
    public double ToUs { get; init; } = double.NaN;

    /// <summary>The instant that decided, microseconds; NaN where there is none.</summary>
    public double DecidedUs { get; init; } = double.NaN;

    /// <summary>What the signals concerned were at that instant; empty where there is none.</summary>
    public string Seen { get; init; } = "";
}

/// <summary>The margin of a single comparison judged on its own.</summary>
/// <param name="Sentence">The comparison.</param>
/// <param name="Margin">Its margin.</param>
public sealed record PartMargin(string Sentence, Margin Margin);
