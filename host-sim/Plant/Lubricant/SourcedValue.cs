namespace LubeController.Plant.Lubricant;

/// <summary>A physical value together with where it comes from.</summary>
/// <param name="Value">The value, in the SI unit of its field.</param>
/// <param name="Source">Standard, book, data sheet, or the reason why it was assumed; not empty.</param>
/// <param name="Confidence">How far it can be relied on.</param>
public sealed record SourcedValue(double Value, string Source, Confidence Confidence)
{
    /// <summary>Whether nobody who reads a result may take this value as known: assumed, or only from memory.</summary>
    public bool IsAssumption => Confidence is Confidence.Assumed or Confidence.FromMemory;
}
