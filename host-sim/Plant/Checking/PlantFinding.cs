namespace LubeController.Plant.Checking;

/// <summary>One thing that the check of a plant found in a description.</summary>
/// <param name="IsRefusal">True: the plant cannot be built. False: a warning.</param>
/// <param name="Path">The field, for instance <c>Divider.Sections[2].VolumePerStrokeM3</c>; indexes count from 0.</param>
/// <param name="Value">The value found, invariant text, SI.</param>
/// <param name="Accepted">What would be accepted, in words, SI.</param>
public sealed record PlantFinding(bool IsRefusal, string Path, string Value, string Accepted)
{
    /// <summary>Path, value and what is accepted, in one line.</summary>
    public override string ToString() => $"{Path} = {Value}: accepted is {Accepted}";
}
