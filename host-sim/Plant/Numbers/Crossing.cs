using System;

namespace LubeController.Plant.Numbers;

/// <summary>Finds the part of a tried step at which the first of several quantities passes its target.</summary>
internal struct Crossing
{
    /// <summary>Part of the step, 1 if nothing is passed within it.</summary>
    internal double Part { get; private set; }

    internal static Crossing None => new() { Part = 1 };

    /// <summary>How near a pressure counts as there, Pa.</summary>
    internal static double NearPa(double targetPa) => 1e-3 + (1e-9 * Math.Abs(targetPa));

    internal void Rising(double start, double end, double target, double near)
    {
        if (start < target - near && end > target + near)
            Part = Math.Min(Part, (target - start) / (end - start));
    }

    internal void Falling(double start, double end, double target, double near)
    {
        if (start > target + near && end < target - near)
            Part = Math.Min(Part, (start - target) / (start - end));
    }
}
