using System;

namespace LubeController.Plant.Faults;

/// <summary>A fault of a part of the plant.</summary>
/// <typeparam name="TPart">What stands for the part in a run.</typeparam>
/// <param name="part">The kind of part.</param>
internal sealed class PlantFault<TPart>(FaultPart<TPart> part) : Fault(part)
{
    /// <summary>What it changes in the part when it is set, and puts back when it heals.</summary>
    internal required Action<TPart, FaultSetting> Change { get; init; }

    /// <summary>Whether the part behaves otherwise now than the sound one would.</summary>
    internal required Func<TPart, FaultedPlant, bool> Differs { get; init; }

    /// <inheritdoc/>
    protected internal override ActiveFault On(FaultHost host, string part)
    {
        var plant = (FaultedPlant)host;
        return new InPlace(this, part, plant.Find((FaultPart<TPart>)Part, part), plant);
    }

    private sealed class InPlace(PlantFault<TPart> fault, string name, TPart part, FaultedPlant plant) : ActiveFault(fault, name)
    {
        protected override void Change(in FaultSetting setting) => fault.Change(part, setting);

        protected internal override bool MakesDifference() => fault.Differs(part, plant);
    }
}
