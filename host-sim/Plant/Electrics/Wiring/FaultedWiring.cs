using System.Collections.Generic;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Electrics.Wiring;

/// <summary>
/// A wiring and the faults set on it. Beside it runs, for each fault, the same wiring without that fault: where a
/// terminal, an input or a fuse of the two differs the fault makes a difference.
/// </summary>
internal sealed class FaultedWiring(SupervisoryWiringDescription description, ulong seed)
{
    private readonly List<Fault> _faults = [];

    /// <summary>The wiring, to read from.</summary>
    internal SupervisoryWiring Wiring { get; } = new(description, seed);

    internal void SetOutput(int output, bool energised)
    {
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
        var copy = new SupervisoryWiring(description, seed);
        copy.TakeOutputs(Wiring);
        // Relays pull in while nothing is wrong, as they did before the first fault.
        copy.Read();
        foreach (Fault fault in _faults)
            WiringFaults.Apply(copy, fault.Kind, fault.Part, fault.Ohms);
        for (int fuse = 0; fuse < description.Fuses.Count; fuse++)
        {
            if (Wiring.IsBlown(fuse))
                copy.SetFuseBlown(fuse, true);
        }

        return copy;
    }

    private readonly record struct Fault(FaultKind Kind, string Part, double Ohms, SupervisoryWiring Without)
    {
        public bool Is(FaultKind kind, string part) => Kind == kind && string.Equals(Part, part, System.StringComparison.Ordinal);
    }
}
