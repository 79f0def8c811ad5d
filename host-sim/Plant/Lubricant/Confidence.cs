namespace LubeController.Plant.Lubricant;

/// <summary>How far a physical value can be relied on.</summary>
public enum Confidence
{
    /// <summary>Laid down by a standard, which the source names.</summary>
    Standard,

    /// <summary>Published: read in the work that the source names.</summary>
    Published,

    /// <summary>Measured on this lubricant, or stated by its supplier.</summary>
    Measured,

    /// <summary>Recalled from a work that was not at hand; shown to users as assumed.</summary>
    FromMemory,

    /// <summary>Assumed, for want of anything better.</summary>
    Assumed,
}
