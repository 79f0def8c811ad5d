using System;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Injectors;
using LubeController.Plant.Inputs;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;

namespace LubeController.Plant;

/// <summary>What each fault changes in the hydraulics, and how one sees that it made a difference.</summary>
public sealed partial class LubricationSystem
{
    // A leak or burst is stated by its flow at this pressure.
    private const double LeakReferencePa = 1e7;

    // A strainer that passes nothing at all is a blocked line; what is left of a clogged one is at least this.
    private const double LeastOpen = 1e-6;

    // A pressure that a person or a switch would notice, Pa.
    private const double NoticedPa = 1e4;

    private double _airAdded;
    private double _temperatureOffK;
    private bool _ventStuckOpen;
    private bool _ventStuckClosed;

    private bool VentCommandedOpen => Description.VentValve is { } vent && (vent.NormallyOpen ? !_ventCoil : _ventCoil);

    private bool VentIsOpen => Description.VentValve is not null && (_ventStuckOpen || (!_ventStuckClosed && VentCommandedOpen));

    private static void ChangeOutlet(in ActiveFault fault, OutletLine outlet, bool applied)
    {
        switch (fault.Kind)
        {
            case FaultKind.OutletBlocked:
                outlet.Blocked = applied;
                break;
            case FaultKind.OutletRestricted:
                outlet.Open = applied ? fault.Value : 1;
                break;
            case FaultKind.OutletLineLeaking:
                outlet.LostShare = applied ? fault.Value : 0;
                break;
            case FaultKind.OutletBackPressure:
                outlet.AddedBackPressurePa = applied ? fault.Value : 0;
                break;
            default:
                throw NoEffect(fault);
        }
    }

    private void ChangePiston(in ActiveFault fault, bool applied)
    {
        ProgressiveDivider divider = UnitOf(FindSection(fault.Part), out int piston);
        switch (fault.Kind)
        {
            case FaultKind.PistonStiff:
                divider.Stiffen(piston, applied ? fault.Value : 0);
                break;
            case FaultKind.PistonWorn:
                divider.Wear(piston, applied ? fault.Value : 0);
                break;
            case FaultKind.PistonStuck:
                divider.Stick(piston, applied);
                break;
            default:
                throw NoEffect(fault);
        }
    }

    private PlantQuantities ChangeHydraulics(in ActiveFault fault, bool applied)
    {
        switch (fault.Kind)
        {
            case FaultKind.InletBlocked:
                if (_dividers.Length > 0)
                    _dividers[0].InletBlocked = applied;
                return PlantQuantities.None;
            case FaultKind.StrainerClogged:
                _layout.StrainerOpen = applied ? Math.Max(LeastOpen, fault.Value) : 1;
                _layout.FollowLubricant(_lubricant);
                return PlantQuantities.None;
            case FaultKind.LineLeak:
                _leakM3PerSPa = applied ? fault.Value / LeakReferencePa : 0;
                return PlantQuantities.None;
            case FaultKind.LineBurst:
                _burstM3PerSPa = applied ? fault.Value / LeakReferencePa : 0;
                return PlantQuantities.None;
            case FaultKind.CheckValveLeaking:
                _checkLeakM3PerSPa = applied ? fault.Value : 0;
                return PlantQuantities.None;
            case FaultKind.ReliefStuckOpen:
                _relief.SetOpening(applied ? fault.Value : double.NaN);
                return PlantQuantities.None;
            case FaultKind.ReliefStuckClosed:
                _relief.StuckClosed = applied;
                return PlantQuantities.None;
            case FaultKind.VentValveStuckOpen:
                _ventStuckOpen = applied;
                return PlantQuantities.None;
            case FaultKind.VentValveStuckClosed:
                _ventStuckClosed = applied;
                return PlantQuantities.None;
            case FaultKind.InjectorStuck:
                _injectors[FindInjector(fault.Part)].Stuck = applied;
                return PlantQuantities.None;
            case FaultKind.AirInLine:
                return SetAir(applied ? fault.Value : 0);
            case FaultKind.LubricantTemperatureOff:
                _temperatureOffK = applied ? fault.Value : 0;
                FollowLubricant();
                return PlantQuantities.None;
            case FaultKind.ReservoirEmpty:
                return SetContent(applied ? fault.Value : Description.Reservoir.ContentM3, applied);
            default:
                ChangePump(fault, applied);
                return PlantQuantities.None;
        }
    }

    private void ChangePump(in ActiveFault fault, bool applied)
    {
        switch (fault.Kind)
        {
            case FaultKind.SuctionBlocked:
                _pump.SuctionBlocked = applied;
                break;
            case FaultKind.SuctionAerated:
                _reservoir.SuctionAir = applied ? fault.Value : 0;
                break;
            case FaultKind.FillingPoor:
                _pump.Filling = applied ? fault.Value : 1;
                break;
            case FaultKind.PumpSeized:
                _pump.Seized = applied;
                break;
            case FaultKind.PumpOff:
                _pump.MotorDead = applied;
                break;
            case FaultKind.PumpWorn:
                _pump.Wear(applied ? fault.Value : 1, fault.Second);
                break;
            case FaultKind.PumpSlow:
                _pump.SpeedFactor = applied ? fault.Value : 1;
                break;
            case FaultKind.MotorSupplyLow:
                _pump.Supply = applied ? fault.Value : 1;
                break;
            case FaultKind.PumpContactWelded:
                _pump.ContactWelded = applied;
                break;
            default:
                ChangeReading(fault, applied);
                break;
        }
    }

    private void ChangeReading(in ActiveFault fault, bool applied)
    {
        switch (fault.Kind)
        {
            case FaultKind.GaugeWrong:
                _gauge!.OffsetPa = applied ? fault.Value : 0;
                break;
            case FaultKind.TransmitterWrong:
                _transmitter.OffsetPa = applied ? fault.Value : 0;
                break;
            case FaultKind.TransmitterLagging:
                _transmitter.LagS = applied ? fault.Value : double.NaN;
                break;
            case FaultKind.TransmitterLoopResistive:
                _transmitter.ExtraOhms = applied ? fault.Value : 0;
                break;
            case FaultKind.TransmitterLoopBroken or FaultKind.TransmitterLoopShorted or FaultKind.TransmitterFailsLow or FaultKind.TransmitterFailsHigh:
                _transmitter.LoopFault = WorstLoopFault();
                break;
            default:
                throw NoEffect(fault);
        }
    }

    // Of several at once the one that lies nearest to the input counts.
    private LoopFault WorstLoopFault() =>
        IsFaulted(FaultKind.TransmitterLoopBroken) ? LoopFault.WireBroken
        : IsFaulted(FaultKind.TransmitterLoopShorted) ? LoopFault.Shorted
        : IsFaulted(FaultKind.TransmitterFailsLow) ? LoopFault.DrivesLow
        : IsFaulted(FaultKind.TransmitterFailsHigh) ? LoopFault.DrivesHigh
        : LoopFault.None;

    // Whoever bleeds a line lets out all air beyond what stood in it at the start.
    private PlantQuantities SetAir(double addedM3)
    {
        double before = _network.AirM3At(0);
        double target = addedM3 > 0 ? before + addedM3 - _airAdded : Math.Min(before, _airAtStart);
        _airAdded = addedM3;
        _bled += _network.SetAir(Math.Max(0, target));
        _airPlaced += _network.AirM3At(0) - before;
        return PlantQuantities.LinePressure | PlantQuantities.EndPressure;
    }

    private PlantQuantities SetContent(double contentM3, bool downwards)
    {
        if (downwards && contentM3 < _reservoir.ContentM3)
            _removed -= _reservoir.Jump(contentM3);
        else if (!downwards && contentM3 > _reservoir.ContentM3)
            _refilled += _reservoir.Jump(contentM3);
        return PlantQuantities.ReservoirContent;
    }

    /// <summary>Whether a fault of the hydraulics makes a difference now: the part behaves otherwise than the sound one would.</summary>
    private bool HydraulicEffect(in ActiveFault fault) => FaultCatalogue.Of(fault.Kind).Part switch
    {
        FaultPart.Outlet => OutletEffect(fault),
        FaultPart.Section => PistonEffect(fault),
        FaultPart.Injector => _injectors[FindInjector(fault.Part)].WouldMove(_network),
        _ => LineEffect(fault),
    };

    private bool OutletEffect(in ActiveFault fault)
    {
        int outlet = FindOutlet(fault.Part);
        bool flows = _outlets[outlet].StepLiquidM3 > 0;
        if (fault.Kind == FaultKind.OutletLineLeaking || (flows && fault.Kind != FaultKind.OutletBlocked))
            return flows;
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

    private bool PistonEffect(in ActiveFault fault)
    {
        ProgressiveDivider divider = UnitOf(FindSection(fault.Part), out int piston);
        if (fault.Kind != FaultKind.PistonWorn)
            return divider.IsPushed(_network, piston);
        for (int b = 0; b < _network.Branches; b++)
        {
            ref readonly Branch branch = ref _network.Branch(b);
            if (branch.Kind == BranchKind.Bypass && branch.Unit == divider.Unit && branch.Part == piston && _network.BranchVolumeM3(b) > 0)
                return true;
        }

        return false;
    }

    private bool LineEffect(in ActiveFault fault) => fault.Kind switch
    {
        FaultKind.InletBlocked => _dividers.Length > 0 && _dividers[0].WouldMove(_network),
        FaultKind.LineLeak or FaultKind.LineBurst => _leakedStep > 0,
        FaultKind.CheckValveLeaking => _returnedStep > 0,
        FaultKind.ReliefStuckOpen => _relief.Open && _relief.OpeningPa < Description.Relief.OpeningPressurePa,
        FaultKind.ReliefStuckClosed => _network.PressurePa(0) >= Description.Relief.OpeningPressurePa - Crossing.NearPa(Description.Relief.OpeningPressurePa),
        FaultKind.VentValveStuckOpen => !VentCommandedOpen && _network.PressurePa(0) > NoticedPa,
        FaultKind.VentValveStuckClosed => VentCommandedOpen && _network.PressurePa(0) > NoticedPa,
        FaultKind.StrainerClogged => _pumpedStep > 0,
        FaultKind.LubricantTemperatureOff => _pumpedStep > 0 || TemperatureIsRead,
        FaultKind.SuctionAerated => _ingestedStep > 0,
        FaultKind.PumpContactWelded => !_pump.Contact && _pump.Turns,
        FaultKind.PumpWorn => _pumpedStep > 0 && _network.PressurePa(0) > NoticedPa,
        FaultKind.SuctionBlocked or FaultKind.FillingPoor or FaultKind.PumpOff or FaultKind.PumpSeized or FaultKind.PumpSlow
            or FaultKind.MotorSupplyLow => _pump.Contact || _pump.ContactWelded,
        FaultKind.GaugeWrong => _gauge!.IsOff(0),
        FaultKind.TransmitterWrong or FaultKind.TransmitterLoopBroken or FaultKind.TransmitterLoopShorted or FaultKind.TransmitterLoopResistive
            or FaultKind.TransmitterFailsLow or FaultKind.TransmitterFailsHigh => _transmitter.IsOff(0),
        FaultKind.TransmitterLagging => Math.Abs(_transmitter.ReadingPa(0) - _network.PressurePa(_transmitter.Node)) > NoticedPa,
        _ => true,
    };

    private int FindSection(string name)
    {
        for (int i = 0; i < _sections.Count; i++)
        {
            if (string.Equals(_sections[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        throw new ArgumentException($"There is no section '{name}' in plant '{Description.Name}'.", nameof(name));
    }

    private int FindInjector(string name)
    {
        for (int i = 0; i < Description.Injectors.Count; i++)
        {
            if (string.Equals(Description.Injectors[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        throw new ArgumentException($"There is no injector '{name}' in plant '{Description.Name}'.", nameof(name));
    }

    private static InvalidOperationException NoEffect(in ActiveFault fault) => new($"Fault {fault.Kind} acts on no part of the hydraulics.");
}
