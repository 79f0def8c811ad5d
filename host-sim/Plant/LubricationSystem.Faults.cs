using System;
using System.Collections.Generic;
using LubeController.Plant.Faults;
using LubeController.Plant.Sensors;

namespace LubeController.Plant;

/// <summary>Faults: each changes a physical part; what follows, follows.</summary>
public sealed partial class LubricationSystem
{
    private readonly List<ActiveFault> _faults = [];

    /// <summary>The faults in place, in the order in which they were applied.</summary>
    public IReadOnlyList<ActiveFault> Faults => _faults;

    /// <summary>Applies a fault now. The same fault again, with the same numbers, changes nothing; with others, it replaces it.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="part">Name of the part, empty where there is nothing to choose.</param>
    /// <param name="value">The magnitude, SI; null: its default.</param>
    /// <param name="second">The second number, SI; null: its default.</param>
    /// <returns>Its entry in <see cref="FaultLog"/>.</returns>
    /// <exception cref="ArgumentException">The plant has no such part, or a number lies outside its range.</exception>
    public int ApplyFault(FaultKind kind, string part = "", double? value = null, double? second = null)
    {
        FaultInfo info = Known(kind, part);
        double magnitude = Number(info, info.Parameter, value);
        double other = Number(info, info.Second, second);
        int index = IndexOfFault(kind, part);
        if (index >= 0 && _faults[index].Value == magnitude && _faults[index].Second == other)
            return _faults[index].Entry;
        NoteEffects();
        if (index >= 0)
            _log.Ended(_faults[index].Entry, NowUs);
        var fault = new ActiveFault(kind, part, magnitude) { Second = other, Entry = _log.Applied(kind, part, NowUs) };
        if (index >= 0)
            _faults[index] = fault;
        else
            _faults.Add(fault);
        Anchor();
        Settle(Change(fault, true));
        return fault.Entry;
    }

    /// <summary>
    /// Gives a fault that is in place another magnitude, now, as one that grows: its entry in <see cref="FaultLog"/> goes on.
    /// </summary>
    /// <param name="kind">The kind.</param>
    /// <param name="part">Name of the part, empty where there is nothing to choose.</param>
    /// <param name="value">The magnitude, SI.</param>
    /// <returns>Whether the fault is in place; if not, nothing changes.</returns>
    /// <exception cref="ArgumentException">The plant has no such part, or the magnitude lies outside its range.</exception>
    public bool AdjustFault(FaultKind kind, string part, double value)
    {
        FaultInfo info = Known(kind, part);
        double magnitude = Number(info, info.Parameter, value);
        int index = IndexOfFault(kind, part);
        if (index < 0)
            return false;
        if (_faults[index].Value == magnitude)
            return true;
        NoteEffects();
        _faults[index] = _faults[index] with { Value = magnitude };
        Anchor();
        Settle(Change(_faults[index], true));
        return true;
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
        NoteEffects();
        ActiveFault fault = _faults[index];
        _faults.RemoveAt(index);
        _log.Ended(fault.Entry, NowUs);
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

    private static double Number(FaultInfo info, FaultParameter? parameter, double? value)
    {
        if (parameter == null)
        {
            return value is null
                ? 0
                : throw new ArgumentException($"Fault {info.Name} with value {value}: accepted is none.", nameof(value));
        }

        double number = value ?? parameter.Default;
        return number >= parameter.Minimum && number <= parameter.Maximum
            ? number
            : throw new ArgumentException(
                $"Fault {info.Name}, {parameter.Name} = {number}: accepted is {parameter.Minimum} to {parameter.Maximum} {parameter.Unit}.",
                nameof(value));
    }

    private PlantQuantities Change(ActiveFault fault, bool applied)
    {
        FaultPart part = FaultCatalogue.Of(fault.Kind).Part;
        // What these show jumps: the point before the jump is recorded too.
        if (part is FaultPart.ControlSupply or FaultPart.Transmitter or FaultPart.Gauge)
            Observer?.OnEvent(this, NowUs, new PlantChange(PlantQuantities.ControlSupply, 0, 0));
        switch (part)
        {
            case FaultPart.Outlet:
                ChangeOutlet(fault, _outlets[FindOutlet(fault.Part)], applied);
                break;
            case FaultPart.Section:
                ChangePiston(fault, applied);
                break;
            case FaultPart.CycleSwitch:
                ChangeCycleSwitch(fault, applied);
                break;
            case FaultPart.Sensor or FaultPart.SensorCore or FaultPart.SensorCorePair:
                ChangeSensor(fault, applied);
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
            case FaultPart.ControlSupply:
                ChangeSupply(fault, applied);
                return PlantQuantities.ControlSupply;
            case FaultPart.Shaft:
                TheShaft.SetLost(NowUs, applied);
                break;
            case FaultPart.Wire or FaultPart.WirePair or FaultPart.WiringContact or FaultPart.Lamp or FaultPart.Fuse when applied:
                TheWiring.Set(fault.Kind, fault.Part, fault.Value);
                break;
            case FaultPart.Wire or FaultPart.WirePair or FaultPart.WiringContact or FaultPart.Lamp or FaultPart.Fuse:
                TheWiring.Heal(fault.Kind, fault.Part);
                break;
            default:
                return ChangeHydraulics(fault, applied);
        }

        return PlantQuantities.None;
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
            case FaultKind.CycleSwitchWireLoose when applied:
                cycle.StartLooseWire(fault.Value, fault.Second, NowUs);
                break;
            case FaultKind.CycleSwitchWireLoose:
                cycle.StopLooseWire();
                break;
            default:
                cycle.StopChatter();
                break;
        }

        ScheduleToggle();
    }

    private void ChangeSensor(ActiveFault fault, bool applied)
    {
        CycleSwitch cycle = SensedSwitch(fault.Part);
        int plus = fault.Part.IndexOf('+');
        cycle.Follow(NowUs);
        cycle.Sensed!.Change(fault.Kind, plus < 0 ? "" : fault.Part[(plus + 1)..], fault.Value, applied);
        ScheduleToggle();
    }

    // The part is the switch's name, alone or with colours of cores behind a plus sign.
    private CycleSwitch SensedSwitch(string part)
    {
        for (int index = 0; index < _switches.Length; index++)
        {
            string name = Description.CycleSwitches[index].Name;
            if (part.StartsWith(name, StringComparison.Ordinal) && (part.Length == name.Length || part[name.Length] == '+'))
                return _switches[index];
        }

        throw new ArgumentException($"The plant has no cycle switch of the part '{part}'.", nameof(part));
    }
}
