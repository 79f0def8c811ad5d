using System.Collections.Generic;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Wiring;

/// <summary>
/// An input of the supervisory system: a digital input by IEC 61131-2, or one that supervises its line by the voltage
/// across it. Immutable.
/// </summary>
public sealed record SupervisoryInputDescription
{
    /// <summary>Name, unique among all parts.</summary>
    public required string Name { get; init; }

    /// <summary>Its terminal.</summary>
    public required string From { get; init; }

    /// <summary>Its common terminal.</summary>
    public required string To { get; init; }

    /// <summary>Type of a digital input.</summary>
    public InputType Type { get; init; } = InputType.Type3;

    /// <summary>What a digital input makes of its undefined zone.</summary>
    public UndefinedPolicy Undefined { get; init; } = UndefinedPolicy.Low;

    /// <summary>How it supervises its line; null for a digital input.</summary>
    public LineSupervision? Supervision { get; init; }
}

/// <summary>How an input supervises its line: what it puts across it and what the voltage there means.</summary>
public sealed record LineSupervision
{
    /// <summary>Open-circuit voltage that the input itself feeds the line with, V; 0 where the line is fed from elsewhere.</summary>
    public double FeedV { get; init; }

    /// <summary>Resistance of the feed, or of the input itself where it does not feed, ohm, 1 to 1e6.</summary>
    public required double Ohms { get; init; }

    /// <summary>The windows of voltage, which do not overlap; one or more.</summary>
    public required IReadOnlyList<VoltageWindow> Windows { get; init; }

    /// <summary>The state outside all windows.</summary>
    public string Elsewhere { get; init; } = "fault";
}

/// <summary>A window of voltage and what it means.</summary>
/// <param name="State">The state's name.</param>
/// <param name="LowV">From this voltage, V.</param>
/// <param name="HighV">Up to this voltage, V, higher.</param>
public sealed record VoltageWindow(string State, double LowV, double HighV);
