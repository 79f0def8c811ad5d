using System;
using System.Collections.Generic;
using LubeController.Plant.Contacts;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>
/// A wiring and the faults set on it. Beside it runs, for each fault, the same wiring without that fault: where a
/// terminal, an input or a fuse of the two differs the fault makes a difference.
/// </summary>
internal sealed class FaultedWiring
{
    private readonly SupervisoryWiringDescription _description;
    private readonly ulong _seed;
    private readonly List<Fault> _faults = [];
    private readonly OutputContact?[] _relays;

    internal FaultedWiring(SupervisoryWiringDescription description, ulong seed)
    {
        _description = description;
        _seed = seed;
        Wiring = new SupervisoryWiring(description, seed);
        _relays = new OutputContact?[Wiring.Outputs.Count];
        foreach (WiringRelay relay in description.Relays)
            _relays[OutputOf(relay)] = new OutputContact(relay.Contact, unchecked(seed + (ulong)OutputOf(relay)));
    }

    /// <summary>The wiring, to read from.</summary>
    internal SupervisoryWiring Wiring { get; }

    /// <summary>When a relay's contact next moves by itself, us; <see cref="long.MaxValue"/> where all rest.</summary>
    internal long NextUs
    {
        get
        {
            long next = long.MaxValue;
            foreach (OutputContact? relay in _relays)
                next = Math.Min(next, relay?.NextEventUs ?? long.MaxValue);
            return next;
        }
    }

    /// <summary>Lets the relays move up to a time.</summary>
    internal void AdvanceTo(long timeUs)
    {
        for (int output = 0; output < _relays.Length; output++)
        {
            if (_relays[output] is not { } relay || relay.NextEventUs > timeUs)
                continue;
            relay.AdvanceTo(timeUs);
            Place(output, relay);
        }
    }

    internal void SetOutput(int output, bool energised, long timeUs)
    {
        if (_relays[output] is { } relay)
        {
            relay.AdvanceTo(timeUs);
            relay.Command(energised);
            Place(output, relay);
            return;
        }

        Wiring.SetOutput(output, energised);
        foreach (Fault fault in _faults)
            fault.Without.SetOutput(output, energised);
    }

    internal void SetOutputBeating(int output)
    {
        Wiring.SetOutputBeating(output);
        foreach (Fault fault in _faults)
            fault.Without.SetOutputBeating(output);
    }

    /// <summary>Sets a fault, or gives one that is set another resistance.</summary>
    internal void Set(FaultKind kind, string part, double ohms)
    {
        int index = IndexOf(kind, part);
        SupervisoryWiring without = index >= 0 ? _faults[index].Without : Copy();
        WiringFaults.Apply(Wiring, kind, part, ohms);
        foreach (Fault other in _faults)
        {
            if (!other.Is(kind, part))
                WiringFaults.Apply(other.Without, kind, part, ohms);
        }

        var fault = new Fault(kind, part, ohms, without);
        if (index >= 0)
            _faults[index] = fault;
        else
            _faults.Add(fault);
    }

    /// <summary>Takes a fault away; one that is not set changes nothing.</summary>
    internal void Heal(FaultKind kind, string part)
    {
        int index = IndexOf(kind, part);
        if (index < 0)
            return;
        _faults.RemoveAt(index);
        WiringFaults.Heal(Wiring, kind, part);
        foreach (Fault other in _faults)
            WiringFaults.Heal(other.Without, kind, part);
    }

    /// <summary>Whether a fault that is set makes a difference now.</summary>
    internal bool MakesDifference(FaultKind kind, string part) => IndexOf(kind, part) is >= 0 and var index && Wiring.DiffersFrom(_faults[index].Without);

    private int OutputOf(WiringRelay relay)
    {
        int output = 0;
        while (!string.Equals(Wiring.Outputs[output], relay.Output, StringComparison.Ordinal))
            output++;
        return output;
    }

    private void Place(int output, OutputContact relay)
    {
        bool open = relay.IsClosed(ContactSide.NormallyOpen);
        bool closed = relay.IsClosed(ContactSide.NormallyClosed);
        Wiring.SetOutputSides(output, open, closed);
        foreach (Fault fault in _faults)
            fault.Without.SetOutputSides(output, open, closed);
    }

    private int IndexOf(FaultKind kind, string part)
    {
        for (int index = 0; index < _faults.Count; index++)
        {
            if (_faults[index].Is(kind, part))
                return index;
        }

        return -1;
    }

    private SupervisoryWiring Copy()
    {
        var copy = new SupervisoryWiring(_description, _seed);
        copy.CopyOutputs(Wiring);
        // Relays pull in while nothing is wrong, as they did before the first fault.
        copy.Read();
        foreach (Fault fault in _faults)
            WiringFaults.Apply(copy, fault.Kind, fault.Part, fault.Ohms);
        for (int fuse = 0; fuse < _description.Fuses.Count; fuse++)
        {
            if (Wiring.IsBlown(fuse))
                copy.SetFuseBlown(fuse, true);
        }

        return copy;
    }

    private readonly record struct Fault(FaultKind Kind, string Part, double Ohms, SupervisoryWiring Without)
    {
        public bool Is(FaultKind kind, string part) => Kind == kind && string.Equals(Part, part, StringComparison.Ordinal);
    }
}
