using System;
using System.Collections.Generic;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>A fault of the wiring to a supervisory system. It can be put on any such wiring, in a plant or alone.</summary>
public sealed class WiringFault : Fault
{
    private readonly WiringPart _part;
    private readonly Action<SupervisoryWiring, WiringPlace, FaultSetting> _change;

    internal WiringFault(WiringPart part, Action<SupervisoryWiring, WiringPlace, FaultSetting> change)
        : base(part)
    {
        _part = part;
        _change = change;
    }

    /// <summary>The parts of a wiring that can have it; two that touch are joined by a plus sign.</summary>
    public IReadOnlyList<string> PartsIn(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return _part.NamesIn(wiring);
    }

    /// <summary>Puts it on a wiring, with its preset resistance where it has one.</summary>
    /// <param name="wiring">The wiring.</param>
    /// <param name="part">The part, one of <see cref="PartsIn"/>.</param>
    /// <exception cref="ArgumentException">No such part.</exception>
    public void Apply(SupervisoryWiring wiring, string part)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        Put(wiring, _part.PlaceIn(wiring.Description, part), new FaultSetting(true, Parameter?.Default ?? 0, 0, 0));
    }

    internal void Put(SupervisoryWiring wiring, WiringPlace place, FaultSetting setting) => _change(wiring, place, setting);

    /// <inheritdoc/>
    protected internal override ActiveFault On(FaultHost host, string part)
    {
        FaultedWiring wiring = ((FaultedPlant)host).Find(_part, part);
        return new WiringFaultInPlace(this, part, wiring, _part.PlaceIn(wiring.Wiring.Description, part));
    }
}
