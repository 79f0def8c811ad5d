using System;
using System.Collections.Generic;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant;

/// <summary>Faults: each changes a physical part; what follows, follows.</summary>
public sealed partial class LubricationSystem
{
    internal override double PumpedStepM3 => _pumpedStep;

    internal override double IngestedStepM3 => _ingestedStep;

    internal override double ReturnedStepM3 => _returnedStep;

    internal override double LeakedStepM3 => _leakedStep;

    internal PumpUnit Pump => _pump;

    internal LubricantReservoir Reservoir => _reservoir;

    internal LubricantTemperature Temperature => _temperature;

    internal LineLayout Layout => _layout;

    internal LineAir Air => _air;

    internal LineDrains Drains => _drains;

    internal ReliefValve Relief => _relief;

    internal VentValve Vent => _vent;

    internal LaggedPressure Transmitter => _transmitter;

    internal LaggedPressure? Gauge => _gauge;

    internal PressureSwitch? PressureSwitch => _pressureSwitch;

    internal Shaft? Shaft => _shaft;

    internal FaultedWiring? FaultedWiring => _wiring;

    internal DividerPart Inlet => new(_dividers[0], -1, _network);

    internal FeedingSupply FeedingSupply => new(_supply, SupplyIsShown);

    /// <inheritdoc/>
    protected override string Title => $"plant '{Description.Name}'";

    /// <inheritdoc/>
    protected internal override long TimeUs => NowUs;

    /// <inheritdoc/>
    public override IReadOnlyList<string> PartsOf(Fault fault) => FaultCatalogue.PartNames(fault, Description);

    internal override double NodePressurePa(int node) => _network.PressurePa(node);

    internal override TPart Find<TPart>(FaultPart<TPart> kind, string name) => (TPart)PlantPart.Of(kind)!.Find(this, name);

    internal OutletInPlace OutletOf(string name)
    {
        int outlet = FindOutlet(name);
        return new OutletInPlace(_outlets[outlet], () => IsPushedInto(outlet));
    }

    internal DividerPart PistonOf(string name)
    {
        ProgressiveDivider divider = UnitOf(FindSection(name), out int piston);
        return new DividerPart(divider, piston, _network);
    }

    internal InjectorInPlace InjectorOf(string name)
    {
        int injector = 0;
        while (!string.Equals(Description.Injectors[injector].Name, name, StringComparison.Ordinal))
            injector++;
        return new InjectorInPlace(_injectors[injector], _network);
    }

    internal CycleSwitch CycleSwitchOf(string name) => _switches[FindCycleSwitch(name)];

    private protected override void Change(ActiveFault fault, bool on)
    {
        PlantPart part = PlantPart.Of(fault.Fault.Part)!;
        Anchor();
        // What these show jumps: the point before the jump is recorded too.
        if (part.ShowsAtOnce)
            Observer?.OnEvent(this, NowUs, new PlantChange(PlantQuantities.ControlSupply, 0, 0));
        base.Change(fault, on);
        part.Followed?.Invoke(this);
        Settle(part.Jumps);
    }

    private bool IsPushedInto(int outlet)
    {
        foreach (ProgressiveDivider divider in _dividers)
        {
            if (divider.IsKeptBy(_network, outlet))
                return true;
        }

        foreach (Injector injector in _injectors)
        {
            if (injector.OutletIndex == outlet && injector.WouldMove(_network))
                return true;
        }

        return false;
    }

    private int FindSection(string name)
    {
        for (int i = 0; i < _sections.Count; i++)
        {
            if (string.Equals(_sections[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        throw new ArgumentException($"There is no section '{name}' in plant '{Description.Name}'.", nameof(name));
    }
}
