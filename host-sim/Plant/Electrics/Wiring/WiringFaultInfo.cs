namespace LubeController.Plant.Electrics.Wiring;

/// <summary>One kind of wiring fault.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Lower-case name, for instance <c>wire-open</c>.</param>
/// <param name="Effect">What changes physically.</param>
/// <param name="Notice">What a person at the machine would notice.</param>
/// <param name="Ohms">Range of its resistance, or null where it has none.</param>
public sealed record WiringFaultInfo(WiringFaultKind Kind, string Name, string Effect, string Notice, OhmsRange? Ohms);

/// <summary>The range of a fault's resistance.</summary>
/// <param name="Minimum">ohm.</param>
/// <param name="Maximum">ohm.</param>
/// <param name="Preset">ohm, where nothing is said.</param>
public sealed record OhmsRange(double Minimum, double Maximum, double Preset);
