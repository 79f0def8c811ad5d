using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>A fault on a part of a plant's wiring.</summary>
internal sealed class WiringFaultInPlace(WiringFault fault, string part, FaultedWiring wiring, WiringPlace place) : ActiveFault(fault, part)
{
    private FaultSetting _setting;

    /// <summary>The same wiring without this fault; null before it is set.</summary>
    internal SupervisoryWiring? Without { get; set; }

    /// <summary>Sets another wiring's part as this one's is set.</summary>
    internal void PutOn(SupervisoryWiring other) => fault.Put(other, place, _setting);

    /// <inheritdoc/>
    protected override void Change(in FaultSetting setting)
    {
        _setting = setting;
        if (setting.On)
            wiring.Set(this);
        else
            wiring.Heal(this);
    }

    /// <inheritdoc/>
    protected internal override bool MakesDifference() => Without != null && wiring.Wiring.DiffersFrom(Without);
}
