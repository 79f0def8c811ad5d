using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>A relay's coil, its two voltages and the contacts it moves.</summary>
internal sealed class Coil(int conductor, double pullInV, double dropOutV)
{
    internal int Conductor { get; } = conductor;

    internal double PullInV { get; } = pullInV;

    internal double DropOutV { get; } = dropOutV;

    internal bool Energised { get; set; }

    internal List<CoilContact> Contacts { get; } = [];
}

/// <summary>One contact of a coil.</summary>
/// <param name="Conductor">Its conductor.</param>
/// <param name="ClosedOhms">Resistance when closed.</param>
/// <param name="ClosedWhenEnergised">True for a normally open contact.</param>
internal readonly record struct CoilContact(int Conductor, double ClosedOhms, bool ClosedWhenEnergised);
