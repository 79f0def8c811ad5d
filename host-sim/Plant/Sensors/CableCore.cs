namespace LubeController.Plant.Sensors;

/// <summary>
/// Cores of a switch's cable. Colours and pins of an M12 A-coded connector: EN 50044 and IEC 60947-5-2.
/// </summary>
public enum CableCore
{
    /// <summary>Supply plus: brown, pin 1.</summary>
    Plus,

    /// <summary>Supply minus: blue, pin 3.</summary>
    Minus,

    /// <summary>Output: black, pin 4.</summary>
    Signal,
}
