using System;
using System.Collections.Generic;
using LubeController.Plant.Contacts;

namespace LubeController.Plant.Wiring;

/// <summary>
/// A wiring and the faults set on it. Beside it runs, for each fault, the same wiring without that fault: where a
/// terminal, an input or a fuse of the two differs the fault makes a difference.
/// </summary>
internal sealed class FaultedWiring
{
    private readonly SupervisoryWiringDescription _description;
    private readonly ulong _seed;
    private readonly List<WiringFaultInPlace> _faults = [];
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
        foreach (WiringFaultInPlace fault in _faults)
            fault.Without!.SetOutput(output, energised);
    }

    internal void SetOutputBeating(int output)
    {
        Wiring.SetOutputBeating(output);
        foreach (WiringFaultInPlace fault in _faults)
            fault.Without!.SetOutputBeating(output);
    }

    /// <summary>Sets a fault, or gives one that is set another resistance.</summary>
    internal void Set(WiringFaultInPlace fault)
    {
        if (fault.Without == null)
        {
            fault.Without = Copy();
            _faults.Add(fault);
        }

        PutOnAllBut(fault);
    }

    /// <summary>Takes a fault away that is set.</summary>
    internal void Heal(WiringFaultInPlace fault)
    {
        PutOnAllBut(fault);
        _faults.Remove(fault);
    }

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
        foreach (WiringFaultInPlace fault in _faults)
            fault.Without!.SetOutputSides(output, open, closed);
    }

    private void PutOnAllBut(WiringFaultInPlace fault)
    {
        fault.PutOn(Wiring);
        foreach (WiringFaultInPlace other in _faults)
        {
            if (other != fault)
                fault.PutOn(other.Without!);
        }
    }

    private SupervisoryWiring Copy()
    {
        var copy = new SupervisoryWiring(_description, _seed);
        copy.CopyOutputs(Wiring);
        // Relays pull in while nothing is wrong, as they did before the first fault.
        copy.Read();
        foreach (WiringFaultInPlace fault in _faults)
            fault.PutOn(copy);
        for (int fuse = 0; fuse < _description.Fuses.Count; fuse++)
        {
            if (Wiring.IsBlown(fuse))
                copy.SetFuseBlown(fuse, true);
        }

        return copy;
    }
}
