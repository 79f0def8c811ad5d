namespace LubeController.Plant.Faults;

/// <summary>A number that says how bad a fault is.</summary>
/// <param name="Name">Plain name, for instance <c>flow</c>.</param>
/// <param name="Meaning">What it counts, in a few words.</param>
/// <param name="Unit">SI unit; <c>1</c> for a fraction. <c>K</c> is a difference of temperatures.</param>
/// <param name="Minimum">The least value accepted.</param>
/// <param name="Maximum">The greatest value accepted.</param>
/// <param name="Default">The value taken if none is given.</param>
public sealed record FaultParameter(string Name, string Meaning, string Unit, double Minimum, double Maximum, double Default)
{
    /// <summary>The value at which the fault changes nothing, from which it may grow; null where it can only come at once.</summary>
    public double? Harmless { get; init; }
}
