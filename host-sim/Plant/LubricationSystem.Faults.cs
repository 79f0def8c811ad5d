using System;
using System.Collections.Generic;
using LubeController.Plant.Faults;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Sensing;

namespace LubeController.Plant;

/// <summary>Faults: each changes a physical part; what follows, follows.</summary>
public sealed partial class LubricationSystem
{
    // A leak is stated by its flow at this pressure.
    private const double LeakReferencePa = 1e7;

    private readonly List<ActiveFault> _faults = [];
    private double _airAdded;
#pragma warning disable CS0649, IDE0044
    private double _temperatureOffK;
#pragma warning restore

    /// <summary>The faults in place, in the order in which they were applied.</summary>
    public IReadOnlyList<ActiveFault> Faults => _faults;

    /// <summary>Applies a fault now. The same fault again, with the same value, changes nothing; with another, it replaces it.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="part">Name of the part, empty where there is nothing to choose.</param>
    /// <param name="value">The parameter, SI; null: its default.</param>
    /// <exception cref="ArgumentException">The plant has no such part, or the value lies outside its range.</exception>
    public void ApplyFault(FaultKind kind, string part = "", double? value = null)
    {
        FaultInfo info = Known(kind, part);
        double magnitude = Magnitude(info, value);
        var fault = new ActiveFault(kind, part, magnitude);
        int index = IndexOfFault(kind, part);
        if (index >= 0 && _faults[index].Value == magnitude)
            return;
        if (index >= 0)
            _faults[index] = fault;
        else
            _faults.Add(fault);
        Anchor();
        Settle(Change(fault, true));
    }

    /// <summary>
    /// Heals a fault now, as far as physics allows: a part works again, what was lost stays lost, and an emptied reservoir is
    /// refilled to its content at the start. A fault that is not in place changes nothing.
    /// </summary>
    /// <exception cref="ArgumentException">The plant has no such part.</exception>
    public void HealFault(FaultKind kind, string part = "")
    {
        Known(kind, part);
        int index = IndexOfFault(kind, part);
        if (index < 0)
            return;
        ActiveFault fault = _faults[index];
        _faults.RemoveAt(index);
        Anchor();
        Settle(Change(fault, false));
    }

    /// <summary>Heals every fault that is in place, last first.</summary>
    public void HealAllFaults()
    {
        while (_faults.Count > 0)
            HealFault(_faults[^1].Kind, _faults[^1].Part);
    }

    /// <summary>Whether a fault is in place.</summary>
    public bool IsFaulted(FaultKind kind, string part = "") => IndexOfFault(kind, part) >= 0;

    private int IndexOfFault(FaultKind kind, string part)
    {
        for (int i = 0; i < _faults.Count; i++)
        {
            if (_faults[i].Kind == kind && string.Equals(_faults[i].Part, part, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }

    private FaultInfo Known(FaultKind kind, string part)
    {
        if (!Enum.IsDefined(kind))
            throw new ArgumentException($"There is no fault {kind}: accepted is a member of FaultKind.", nameof(kind));
        FaultInfo info = FaultCatalogue.Of(kind);
        IReadOnlyList<string> names = FaultCatalogue.PartNames(kind, Description);
        foreach (string name in names)
        {
            if (string.Equals(name, part, StringComparison.Ordinal))
                return info;
        }

        string accepted = names.Count == 0 ? "nothing: the plant has no such part" : "'" + string.Join("', '", names) + "'";
        throw new ArgumentException($"Fault {info.Name} on '{part}' in plant '{Description.Name}': accepted is {accepted}.", nameof(part));
    }

    private static double Magnitude(FaultInfo info, double? value)
    {
        if (info.Parameter is not { } parameter)
        {
            return value is null
                ? 0
                : throw new ArgumentException($"Fault {info.Name} with value {value}: accepted is none.", nameof(value));
        }

        double magnitude = value ?? parameter.Default;
        return magnitude >= parameter.Minimum && magnitude <= parameter.Maximum
            ? magnitude
            : throw new ArgumentException(
                $"Fault {info.Name}, {parameter.Name} = {magnitude}: accepted is {parameter.Minimum} to {parameter.Maximum} {parameter.Unit}.",
                nameof(value));
    }

    private PlantQuantities Change(ActiveFault fault, bool applied)
    {
        switch (FaultCatalogue.Of(fault.Kind).Part)
        {
            case FaultPart.Outlet:
                ChangeOutlet(fault, _outlets[FindOutlet(fault.Part)], applied);
                break;
            case FaultPart.CycleSwitch:
                ChangeCycleSwitch(fault, applied);
                break;
            case FaultPart.LevelSwitch:
                ChangeLevelSwitch(fault, applied);
                break;
            case FaultPart.PressureSwitch when fault.Kind == FaultKind.PressureSwitchStuckOn:
                _pressureSwitch!.StuckOn = applied;
                break;
            case FaultPart.PressureSwitch:
                _pressureSwitch!.StuckOff = applied;
                break;
            case FaultPart.Shaft:
                TheShaft.SetLost(NowUs, applied);
                break;
            default:
                return ChangeHydraulics(fault, applied);
        }

        return PlantQuantities.None;
    }

    private static void ChangeOutlet(ActiveFault fault, OutletLine outlet, bool applied)
    {
        switch (fault.Kind)
        {
            default:
                outlet.Blocked = applied;
                break;
        }
    }

    private PlantQuantities ChangeHydraulics(ActiveFault fault, bool applied)
    {
        switch (fault.Kind)
        {
            case FaultKind.InletBlocked:
                if (_dividers.Length > 0)
                    _dividers[0].InletBlocked = applied;
                return PlantQuantities.None;
            case FaultKind.SuctionBlocked:
                _pump.SuctionBlocked = applied;
                return PlantQuantities.None;
            case FaultKind.PumpOff:
                _pump.MotorDead = applied;
                return PlantQuantities.None;
            case FaultKind.PumpWorn:
                _pump.RemainingEfficiency = applied ? fault.Value : 1;
                return PlantQuantities.None;
            case FaultKind.PumpContactWelded:
                _pump.ContactWelded = applied;
                return PlantQuantities.None;
            case FaultKind.LineLeak:
                _leakM3PerSPa = applied ? fault.Value / LeakReferencePa : 0;
                return PlantQuantities.None;
            case FaultKind.AirInLine:
                return SetAir(applied ? fault.Value : 0);
            case FaultKind.ReliefStuckOpen:
                _relief.SetOpening(applied ? fault.Value : double.NaN);
                return PlantQuantities.None;
            case FaultKind.ReservoirEmpty:
                return SetContent(applied ? fault.Value : Description.Reservoir.ContentM3, applied);
            default:
                throw new InvalidOperationException($"Fault {fault.Kind} acts on no part of the hydraulics.");
        }
    }

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

    private void ChangeLevelSwitch(ActiveFault fault, bool applied)
    {
        LevelSwitch level = fault.Part == "low" ? _reservoir.Low : _reservoir.Empty;
        if (fault.Kind == FaultKind.LevelSwitchStuckOn)
            level.StuckOn = applied;
        else
            level.StuckOff = applied;
    }

    private void ChangeCycleSwitch(ActiveFault fault, bool applied)
    {
        CycleSwitch cycle = _switches[FindCycleSwitch(fault.Part)];
        switch (fault.Kind)
        {
            case FaultKind.CycleSwitchStuckOn:
                cycle.StuckOn = applied;
                break;
            case FaultKind.CycleSwitchStuckOff:
                cycle.StuckOff = applied;
                break;
            case FaultKind.CycleSwitchWireBroken:
                cycle.WireBroken = applied;
                break;
            case FaultKind.CycleSwitchChattering when applied:
                cycle.StartChatter(fault.Value, NowUs);
                break;
            default:
                cycle.StopChatter();
                break;
        }

        ScheduleToggle();
    }
}
