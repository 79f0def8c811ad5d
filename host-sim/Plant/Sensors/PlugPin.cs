using System.Collections.Generic;

namespace LubeController.Plant.Sensors;

/// <summary>A pin of a plug as sensors and valves have them.</summary>
/// <param name="Plug">The plug.</param>
/// <param name="Pin">The pin, as the plug is marked.</param>
/// <param name="Colour">Colour of the core on it; empty where none is usual.</param>
/// <param name="Carries">What is on it.</param>
public sealed record PlugPin(string Plug, string Pin, string Colour, string Carries)
{
    /// <summary>Distance of the opposite pins of a form A plug, m (EN 175301-803).</summary>
    public const double FormAPitchM = 18e-3;

    private const string M12 = "M12, A-coded (colours of EN 50044)";
    private const string FormA = "form A, pins 18 mm apart (EN 175301-803)";

    /// <summary>All pins, plug by plug. Those of form A are from memory.</summary>
    public static IReadOnlyList<PlugPin> All { get; } =
    [
        new(M12, "1", CoreColours.ColourOf(CableCore.Plus), "plus"),
        new(M12, "2", "white", "second output"),
        new(M12, "3", CoreColours.ColourOf(CableCore.Minus), "minus"),
        new(M12, "4", CoreColours.ColourOf(CableCore.Signal), "output"),
        new(FormA, "1", "", "the circuit"),
        new(FormA, "2", "", "the circuit"),
        new(FormA, "3", "", "the other side of a changeover contact"),
        new(FormA, "flat", "green and yellow", "earth"),
    ];
}
