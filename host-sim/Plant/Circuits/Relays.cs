using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>The relay coils of a circuit, with the contacts they move.</summary>
internal sealed class Relays(Netlist netlist)
{
    private readonly List<Coil> _coils = [];

    internal int Count => _coils.Count;

    internal void Add(Coil coil) => _coils.Add(coil);

    internal Coil Find(int conductor)
    {
        foreach (Coil coil in _coils)
        {
            if (coil.Conductor == conductor)
                return coil;
        }

        throw new ArgumentException($"'{netlist.Elements[conductor].Name}' is not a coil", nameof(conductor));
    }

    /// <summary>Lets every coil pull in or drop out as its voltage asks.</summary>
    /// <returns>The last coil that moved, or null.</returns>
    internal Coil? Move(OperatingPoint point)
    {
        Coil? moved = null;
        foreach (Coil coil in _coils)
        {
            double across = Math.Abs(point.AcrossV(netlist.Elements[coil.Conductor]));
            bool pulls = coil.Energised ? across > coil.DropOutV : across >= coil.PullInV;
            if (pulls == coil.Energised)
                continue;
            moved = coil;
            coil.Energised = pulls;
            foreach (CoilContact contact in coil.Contacts)
                netlist.SetOhms(contact.Conductor, contact.ClosedWhenEnergised == pulls ? contact.ClosedOhms : double.PositiveInfinity);
        }

        return moved;
    }
}
