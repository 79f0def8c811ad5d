namespace LubeController.Plant.Faults;

/// <summary>One kind of fault: its name, the part that it changes and its parameter.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Lower-case name, for instance <c>outlet-blocked</c>.</param>
/// <param name="Part">What the part name must name.</param>
/// <param name="Parameter">The parameter, or null if there is none.</param>
public sealed record FaultInfo(FaultKind Kind, string Name, FaultPart Part, FaultParameter? Parameter);
