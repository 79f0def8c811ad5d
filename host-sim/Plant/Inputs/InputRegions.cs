using System;

namespace LubeController.Plant.Inputs;

/// <summary>
/// The regions of IEC 61131-2 in the voltage-current plane of one input type. Off where the voltage is under the off
/// maximum or the current under the transition minimum; on where both exceed their on minima; else undefined.
/// </summary>
/// <param name="OffMaximumV">Below this voltage it is off.</param>
/// <param name="OnMinimumV">Above this voltage it may be on.</param>
/// <param name="OnMinimumA">Above this current it may be on.</param>
/// <param name="TransitionMinimumA">Below this current it is off.</param>
public readonly record struct InputRegions(double OffMaximumV, double OnMinimumV, double OnMinimumA, double TransitionMinimumA)
{
    /// <summary>
    /// The regions of a type. Source: IEC 61131-2, 24 V DC. Read in a copy of the standard's table: types 1 and 3 off
    /// 5 V, on 15 and 11 V; type 3 on 2 mA; transition 0.5 mA (type 1) and 2 mA (type 2). From memory: the others.
    /// </summary>
    public static InputRegions Of(InputType type) => type switch
    {
        InputType.Type1 => new(5, 15, 2e-3, 0.5e-3),
        InputType.Type2 => new(5, 11, 6e-3, 2e-3),
        InputType.Type3 => new(5, 11, 2e-3, 1.5e-3),
        _ => throw new ArgumentOutOfRangeException(nameof(type), type, "type 1, 2 or 3"),
    };

    /// <summary>What a voltage and a current mean.</summary>
    public InputReading Read(double voltageV, double currentA)
    {
        // Written so that not-a-number, a floating terminal, is off.
        if (!(voltageV >= OffMaximumV && currentA >= TransitionMinimumA))
            return InputReading.Off;
        return voltageV > OnMinimumV && currentA > OnMinimumA ? InputReading.On : InputReading.Undefined;
    }
}
