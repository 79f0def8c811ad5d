using System;
using System.Collections.Generic;

namespace LubeController.Plant.Electrics.Wiring;

/// <summary>
/// A wiring and the faults set on it in one run. Beside it runs, for each fault that has made no difference yet, the same
/// wiring without that fault: once a terminal, an input or a fuse of the two differs the fault has taken effect.
/// </summary>
public sealed class FaultedWiring
{
    private readonly ulong _seed;
    private readonly List<Entry> _entries = [];

    /// <summary>Builds the circuit, every output de-energised and nothing wrong.</summary>
    /// <param name="description">The wiring.</param>
    /// <param name="seed">Seed of inputs whose undefined zone is drawn.</param>
    /// <exception cref="ArgumentException">The description is refused.</exception>
    public FaultedWiring(SupervisoryWiringDescription description, ulong seed)
    {
        _seed = seed;
        Wiring = new SupervisoryWiring(description, seed);
    }

    /// <summary>The wiring, to read from.</summary>
    public SupervisoryWiring Wiring { get; }

    /// <summary>Energises an output's relay, or lets it go.</summary>
    public void SetOutput(int output, bool energised)
    {
        Wiring.SetOutput(output, energised);
        foreach (Entry entry in _entries)
            entry.Without?.SetOutput(output, energised);
    }

    /// <summary>Lets an output's relay go to and fro.</summary>
    public void SetOutputBeating(int output)
    {
        Wiring.SetOutputBeating(output);
        foreach (Entry entry in _entries)
            entry.Without?.SetOutputBeating(output);
    }

    /// <summary>Sets a fault. The same fault again replaces its resistance.</summary>
    /// <returns>Its entry, for <see cref="TookEffect"/>.</returns>
    /// <exception cref="ArgumentException">No such part.</exception>
    public int Apply(WiringFaultKind kind, string part, double? ohms)
    {
        End(kind, part);
        SupervisoryWiring without = Copy();
        WiringFaults.Heal(without, kind, part);
        WiringFaults.Apply(Wiring, kind, part, ohms);
        foreach (Entry entry in _entries)
        {
            if (entry.Without is { } other)
                WiringFaults.Apply(other, kind, part, ohms);
        }

        _entries.Add(new Entry(kind, part, ohms) { Without = without });
        NoteEffects();
        return _entries.Count - 1;
    }

    /// <summary>Takes a fault away; one that is not set changes nothing.</summary>
    /// <exception cref="ArgumentException">No such part.</exception>
    public void Heal(WiringFaultKind kind, string part)
    {
        NoteEffects();
        End(kind, part);
        WiringFaults.Heal(Wiring, kind, part);
        foreach (Entry entry in _entries)
        {
            if (entry.Without is { } other)
                WiringFaults.Heal(other, kind, part);
        }
    }

    /// <summary>Looks whether a fault makes a difference now. Allocates nothing where none waits.</summary>
    public void NoteEffects()
    {
        foreach (Entry entry in _entries)
        {
            if (entry.Without is not { } without || !Wiring.DiffersFrom(without))
                continue;
            entry.TookEffect = true;
            entry.Without = null;
        }
    }

    /// <summary>Whether a fault made a difference while it was set.</summary>
    /// <param name="entry">What <see cref="Apply"/> returned.</param>
    public bool TookEffect(int entry) => _entries[entry].TookEffect;

    private void End(WiringFaultKind kind, string part)
    {
        foreach (Entry entry in _entries)
        {
            if (entry.Kind != kind || entry.Part != part)
                continue;
            entry.InPlace = false;
            entry.Without = null;
        }
    }

    private SupervisoryWiring Copy()
    {
        var copy = new SupervisoryWiring(Wiring.Description, _seed);
        copy.TakeOutputs(Wiring);
        foreach (Entry entry in _entries)
        {
            if (entry.InPlace)
                WiringFaults.Apply(copy, entry.Kind, entry.Part, entry.Ohms);
        }

        for (int fuse = 0; fuse < Wiring.Description.Fuses.Count; fuse++)
        {
            if (Wiring.IsBlown(fuse))
                copy.SetFuseBlown(fuse, true);
        }

        return copy;
    }

    private sealed class Entry(WiringFaultKind kind, string part, double? ohms)
    {
        public WiringFaultKind Kind { get; } = kind;

        public string Part { get; } = part;

        public double? Ohms { get; } = ohms;

        public bool InPlace { get; set; } = true;

        public bool TookEffect { get; set; }

        public SupervisoryWiring? Without { get; set; }
    }
}
