using System;
using System.Collections.Generic;

namespace LubeController.Plant.Faults;

/// <summary>
/// Every application of a fault in one run, and whether it made a difference: a part that it changed behaved otherwise
/// than the sound one would have. Marking allocates nothing.
/// </summary>
public sealed class FaultLog
{
    private readonly List<FaultEntry> _entries = [];

    /// <summary>The entries, in the order in which the faults were applied.</summary>
    public IReadOnlyList<FaultEntry> Entries => _entries;

    /// <summary>Entries in place that have not made a difference yet.</summary>
    public int Waiting { get; private set; }

    /// <summary>Whether any application of a fault on a part made a difference.</summary>
    public bool TookEffect(Fault fault, string part)
    {
        foreach (FaultEntry entry in _entries)
        {
            if (entry.Fault == fault && entry.TookEffect && string.Equals(entry.Part, part, StringComparison.Ordinal))
                return true;
        }

        return false;
    }

    /// <summary>The applications that made no difference, those still in place among them.</summary>
    public IReadOnlyList<FaultEntry> WithoutEffect => _entries.FindAll(entry => !entry.TookEffect);

    /// <summary>Begins an entry.</summary>
    /// <returns>Its index.</returns>
    internal int Applied(Fault fault, string part, long nowUs)
    {
        _entries.Add(new FaultEntry(fault, part, nowUs));
        Waiting++;
        return _entries.Count - 1;
    }

    /// <summary>Notes that an entry made a difference; only the first time counts.</summary>
    internal void MarkEffect(int entry, long nowUs)
    {
        FaultEntry before = _entries[entry];
        if (before.TookEffect)
            return;
        if (before.EndedUs < 0)
            Waiting--;
        _entries[entry] = before with { EffectUs = nowUs };
    }

    /// <summary>Ends an entry: the fault is healed, or another magnitude takes its place.</summary>
    internal void Ended(int entry, long nowUs)
    {
        FaultEntry before = _entries[entry];
        if (before.EndedUs >= 0)
            return;
        if (!before.TookEffect)
            Waiting--;
        _entries[entry] = before with { EndedUs = nowUs };
    }
}
