using System.Collections.Generic;

namespace LubeController.Plant.Wiring;

/// <summary>
/// The circuit between output contacts and the inputs of a supervisory system. Terminals need no list of their own: two
/// parts meet where they name the same terminal. Immutable; <see cref="WiringCheck"/> says what it may not hold.
/// </summary>
public sealed record SupervisoryWiringDescription
{
    /// <summary>The supplies, one or more. The minus of the first is ground; a short to supply is one to its plus.</summary>
    public required IReadOnlyList<WiringSupply> Supplies { get; init; }

    /// <summary>Fuses.</summary>
    public IReadOnlyList<WiringFuse> Fuses { get; init; } = [];

    /// <summary>Wires: what can break, corrode and touch.</summary>
    public IReadOnlyList<WiringWire> Wires { get; init; } = [];

    /// <summary>Contacts of outputs.</summary>
    public IReadOnlyList<WiringContact> Contacts { get; init; } = [];

    /// <summary>Relays of outputs, where their delays and their bounce count.</summary>
    public IReadOnlyList<WiringRelay> Relays { get; init; } = [];

    /// <summary>Lamps.</summary>
    public IReadOnlyList<WiringLamp> Lamps { get; init; } = [];

    /// <summary>Coils of interposing relays.</summary>
    public IReadOnlyList<WiringCoil> Coils { get; init; } = [];

    /// <summary>Contacts of interposing relays.</summary>
    public IReadOnlyList<WiringCoilContact> CoilContacts { get; init; } = [];

    /// <summary>Resistors.</summary>
    public IReadOnlyList<WiringResistor> Resistors { get; init; } = [];

    /// <summary>Inputs of the supervisory system.</summary>
    public IReadOnlyList<SupervisoryInputDescription> Inputs { get; init; } = [];
}
