namespace LubeController.Plant.Lubricant;

/// <summary>What is pumped.</summary>
public enum LubricantKind
{
    /// <summary>A grease.</summary>
    Grease,

    /// <summary>An oil.</summary>
    Oil,
}
