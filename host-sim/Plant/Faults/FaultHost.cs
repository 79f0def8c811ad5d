using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Plant.Faults;

/// <summary>Something whose parts can have faults: those in place, and every application of one so far.</summary>
public abstract class FaultHost
{
    private readonly List<ActiveFault> _faults = [];

    /// <summary>The faults in place, in the order in which they were applied.</summary>
    public IReadOnlyList<ActiveFault> Faults => _faults;

    /// <summary>
    /// Every application of a fault so far, and whether it made a difference. Differences are seen when a fault changes and at
    /// the host's own events; call <see cref="NoteFaultEffects"/> before reading it at another time.
    /// </summary>
    public FaultLog FaultLog { get; } = new();

    /// <summary>What it is, in messages.</summary>
    protected abstract string Title { get; }

    /// <summary>The present, us.</summary>
    protected internal abstract long TimeUs { get; }

    /// <summary>Whether a fault that is applied again with the same numbers happens again.</summary>
    protected virtual bool Repeats => false;

    /// <summary>
    /// The part names that a fault accepts here; one empty name where there is nothing to choose, none where there is no such
    /// part.
    /// </summary>
    public abstract IReadOnlyList<string> PartsOf(Fault fault);

    /// <summary>Whether a fault on a part made a difference so far.</summary>
    public bool TookEffect(Fault fault, string part = "") => FaultLog.TookEffect(fault, part);

    /// <summary>Whether a fault is in place.</summary>
    public bool IsFaulted(Fault fault, string part = "") => Find(fault, part) != null;

    /// <summary>Looks now which of the faults in place make a difference. Changes nothing else.</summary>
    public void NoteFaultEffects()
    {
        if (FaultLog.Waiting == 0)
            return;
        for (int i = 0; i < _faults.Count; i++)
        {
            ActiveFault fault = _faults[i];
            if (!FaultLog.Entries[fault.Entry].TookEffect && !fault.IsHarmless && fault.MakesDifference())
                FaultLog.MarkEffect(fault.Entry, TimeUs);
        }
    }

    /// <summary>Applies a fault now. One in place is replaced where a number is another.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="part">Name of the part, empty where there is nothing to choose.</param>
    /// <param name="value">The magnitude, SI; null: its default.</param>
    /// <param name="second">The second number, SI; null: its default.</param>
    /// <returns>Its entry in <see cref="FaultLog"/>.</returns>
    /// <exception cref="ArgumentException">There is no such part, or a number lies outside its range.</exception>
    public int ApplyFault(Fault fault, string part = "", double? value = null, double? second = null)
    {
        RefuseUnknown(fault, part);
        double magnitude = Number(fault, fault.Parameter, value);
        double other = Number(fault, fault.Second, second);
        ActiveFault? active = Find(fault, part);
        if (active != null && !Repeats && active.Value == magnitude && active.Second == other)
            return active.Entry;
        NoteFaultEffects();
        if (active != null)
            FaultLog.Ended(active.Entry, TimeUs);
        else
            _faults.Add(active = fault.On(this, part));
        active.Value = magnitude;
        active.Second = other;
        active.Entry = FaultLog.Applied(fault, part, TimeUs);
        Change(active, on: true);
        return active.Entry;
    }

    /// <summary>
    /// Gives a fault that is in place another magnitude, now, as one that grows: its entry in <see cref="FaultLog"/> goes on.
    /// </summary>
    /// <param name="fault">The fault.</param>
    /// <param name="part">Name of the part, empty where there is nothing to choose.</param>
    /// <param name="value">The magnitude, SI.</param>
    /// <returns>Whether the fault is in place; if not, nothing changes.</returns>
    /// <exception cref="ArgumentException">There is no such part, or the magnitude lies outside its range.</exception>
    public bool AdjustFault(Fault fault, string part, double value)
    {
        RefuseUnknown(fault, part);
        double magnitude = Number(fault, fault.Parameter, value);
        if (Find(fault, part) is not { } active)
            return false;
        if (active.Value == magnitude)
            return true;
        NoteFaultEffects();
        active.Value = magnitude;
        Change(active, on: true);
        return true;
    }

    /// <summary>
    /// Heals a fault now, as far as physics allows (<see cref="Fault.Healing"/>). A fault that is not in place changes nothing.
    /// </summary>
    /// <exception cref="ArgumentException">There is no such part.</exception>
    public void HealFault(Fault fault, string part = "")
    {
        RefuseUnknown(fault, part);
        if (Find(fault, part) is not { } active)
            return;
        NoteFaultEffects();
        _faults.Remove(active);
        FaultLog.Ended(active.Entry, TimeUs);
        Change(active, on: false);
    }

    /// <summary>Heals every fault that is in place, last first.</summary>
    public void HealAllFaults()
    {
        while (_faults.Count > 0)
            HealFault(_faults[^1].Fault, _faults[^1].Part);
    }

    /// <summary>Puts a fault in place with its present numbers, or heals it.</summary>
    private protected virtual void Change(ActiveFault fault, bool on) => fault.Change(on, TimeUs);

    private ActiveFault? Find(Fault fault, string part)
    {
        foreach (ActiveFault active in _faults)
        {
            if (active.Fault == fault && string.Equals(active.Part, part, StringComparison.Ordinal))
                return active;
        }

        return null;
    }

    private void RefuseUnknown(Fault fault, string part)
    {
        ArgumentNullException.ThrowIfNull(fault);
        IReadOnlyList<string> names = PartsOf(fault);
        if (names.Contains(part, StringComparer.Ordinal))
            return;
        string accepted = names.Count == 0 ? "nothing: there is no such part" : "'" + string.Join("', '", names) + "'";
        throw new ArgumentException($"Fault {fault.Name} on '{part}' in {Title}: accepted is {accepted}.", nameof(part));
    }

    private static double Number(Fault fault, FaultParameter? parameter, double? value)
    {
        if (parameter == null)
        {
            return value is null
                ? 0
                : throw new ArgumentException($"Fault {fault.Name} with value {value}: accepted is none.", nameof(value));
        }

        double number = value ?? parameter.Default;
        return number >= parameter.Minimum && number <= parameter.Maximum
            ? number
            : throw new ArgumentException(
                $"Fault {fault.Name}, {parameter.Name} = {number}: accepted is {parameter.Minimum} to {parameter.Maximum} {parameter.Unit}.",
                nameof(value));
    }
}
