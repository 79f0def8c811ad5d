using System;

namespace LubeController.Plant.Sensors;

/// <summary>Colour and pin of each core on an M12 A-coded connector (colours of EN 50044).</summary>
public static class CoreColours
{
    /// <summary>The core's colour, in plain words.</summary>
    public static string ColourOf(CableCore core) => core switch
    {
        CableCore.Plus => "brown",
        CableCore.Minus => "blue",
        CableCore.Signal => "black",
        _ => throw new ArgumentOutOfRangeException(nameof(core), core, "plus, minus or signal"),
    };

    /// <summary>The core's pin.</summary>
    public static int PinOf(CableCore core) => core switch
    {
        CableCore.Plus => 1,
        CableCore.Minus => 3,
        CableCore.Signal => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(core), core, "plus, minus or signal"),
    };
}
