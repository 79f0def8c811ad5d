namespace LubeController.Plant.Sensors;

/// <summary>What covers the face of a switch.</summary>
public enum Soiling
{
    /// <summary>Nothing.</summary>
    Clean,

    /// <summary>Metal chips.</summary>
    MetalChips,

    /// <summary>Water.</summary>
    Water,
}
