namespace LubeController.Plant.Faults;

/// <summary>The number that says how bad a fault is.</summary>
/// <param name="Name">Plain name, for instance <c>flow</c>.</param>
/// <param name="Unit">SI unit; <c>1</c> for a fraction.</param>
/// <param name="Minimum">The least value accepted.</param>
/// <param name="Maximum">The greatest value accepted.</param>
/// <param name="Default">The value taken if none is given.</param>
public sealed record FaultParameter(string Name, string Unit, double Minimum, double Maximum, double Default);
