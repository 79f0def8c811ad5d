using System.Collections.Generic;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>One kind of fault of the board: an entry of <see cref="BoardFaults"/>.</summary>
public sealed record BoardFaultInfo : FaultDescription
{
    /// <summary>The kind.</summary>
    public required BoardFaultKind Kind { get; init; }

    /// <summary>The parts of the board that can have it; empty where there is nothing to choose.</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>What they are, in words.</summary>
    public string PartText { get; init; } = "";
}
