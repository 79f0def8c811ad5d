using System;

namespace LubeController.Plant;

/// <summary>
/// What an event touched: continuous quantities whose rate changed, or that jumped, and switches whose level may have
/// changed. Whatever is not named here goes on in the straight line that it was on.
/// </summary>
/// <param name="Quantities">Single quantities.</param>
/// <param name="Pistons">Bit i set: the piston of section i.</param>
/// <param name="Outlets">Bit i set: what outlet i has received.</param>
public readonly record struct PlantChange(PlantQuantities Quantities, ulong Pistons, UInt128 Outlets);
