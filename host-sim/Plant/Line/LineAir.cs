using System;
using LubeController.Plant.Hydraulics;

namespace LubeController.Plant.Line;

/// <summary>Air that is put into the line, and let out of it again with the lubricant that its pressure held.</summary>
/// <param name="network">The network; its air is what stands in it at the start.</param>
internal sealed class LineAir(Network network)
{
    private double _addedM3;

    /// <summary>What stood in the line at the start, m3 at atmosphere.</summary>
    internal double AtStartM3 { get; } = network.AirM3At(0);

    /// <summary>What was put in since the start, less what was let out, m3 at atmosphere.</summary>
    internal double PlacedM3 { get; private set; }

    /// <summary>Lubricant that came out with the air, m3.</summary>
    internal double BledM3 { get; private set; }

    /// <summary>Adds so much in place of what was added before; 0 bleeds: all beyond what stood in the line at the start is let out.</summary>
    internal void Add(double addedM3)
    {
        double before = network.AirM3At(0);
        double target = addedM3 > 0 ? before + addedM3 - _addedM3 : Math.Min(before, AtStartM3);
        _addedM3 = addedM3;
        BledM3 += network.SetAir(Math.Max(0, target));
        PlacedM3 += network.AirM3At(0) - before;
    }
}
