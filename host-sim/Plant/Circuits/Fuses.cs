using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>The fuses of a circuit.</summary>
internal sealed class Fuses(Netlist netlist)
{
    private readonly List<Fuse> _fuses = [];

    internal int Count => _fuses.Count;

    internal void Add(int conductor, double ratedA, double ohms) => _fuses.Add(new Fuse(conductor, ratedA, ohms));

    internal Fuse Find(int conductor)
    {
        foreach (Fuse fuse in _fuses)
        {
            if (fuse.Conductor == conductor)
                return fuse;
        }

        throw new ArgumentException($"'{netlist.Elements[conductor].Name}' is not a fuse", nameof(conductor));
    }

    internal void SetBlown(Fuse fuse, bool blown)
    {
        fuse.Blown = blown;
        netlist.SetOhms(fuse.Conductor, blown ? double.PositiveInfinity : fuse.WholeOhms);
    }

    /// <summary>The fuse that is loaded most beyond its rating goes first, and may save the others.</summary>
    /// <returns>Whether a fuse blew.</returns>
    internal bool BlowWorst(OperatingPoint point)
    {
        Fuse? worst = null;
        double most = 1;
        foreach (Fuse fuse in _fuses)
        {
            double load = Math.Abs(point.CurrentA(netlist.Elements[fuse.Conductor])) / fuse.RatedA;
            if (!fuse.Blown && load > most)
            {
                most = load;
                worst = fuse;
            }
        }

        if (worst is null)
            return false;
        SetBlown(worst, true);
        return true;
    }
}
