namespace LubeController.Plant.Divider;

/// <summary>How many outlets a section of the divider has.</summary>
public enum SectionOutlets
{
    /// <summary>Two outlets, one on each side.</summary>
    Twin,

    /// <summary>One outlet: the section's two sides are joined inside it.</summary>
    Single,
}
