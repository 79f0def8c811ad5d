using System;
using System.Collections.Generic;
using System.IO.Hashing;

namespace LubeController.Analysis.Exploration;

/// <summary>A violation as one worker saw it.</summary>
internal readonly record struct Seen(int Parent, int Letter, int Property, bool InProbe)
{
    public bool IsBefore(in Seen other) => Parent < other.Parent || (Parent == other.Parent && Letter < other.Letter);
}

/// <summary>Takes every letter from some states of a level, with a model of its own.</summary>
internal sealed class ExplorationWorker(IExploredModel model, FingerprintTable known)
{
    private readonly byte[] _compare = new byte[model.CompareLength];
    private StateStore _next = new(model.StateLength);
    private StateStore _present = new(model.StateLength);

    public IExploredModel Model { get; } = model;

    /// <summary>The states that this worker found first, by the place at which it keeps them.</summary>
    public List<UInt128> Found { get; } = [];

    /// <summary>New states of which a probe violated a property.</summary>
    public List<(UInt128 Fingerprint, int Property)> Probed { get; } = [];

    public long Transitions { get; private set; }

    /// <summary>The first violation in the order of states and letters, or null.</summary>
    public Seen? Violation { get; private set; }

    public long Bytes => _next.Bytes + _present.Bytes + ((long)Found.Capacity * 16);

    /// <summary>A state of the level that is being left.</summary>
    public Span<byte> Present(int index) => _present[index];

    /// <summary>Takes all letters from one state.</summary>
    public void Expand(ReadOnlySpan<byte> state, int parent, int level)
    {
        for (int letter = 0; letter < Model.Letters; letter++)
        {
            int property = Model.Move(state, letter);
            if (property == IExploredModel.NoSuchMove)
                continue;
            Transitions++;
            if (property >= 0)
            {
                Note(new Seen(parent, letter, property, false));
                continue;
            }

            Enter(parent, letter, level);
        }
    }

    /// <summary>Takes the model's present state as reached.</summary>
    public void Enter(int parent, int letter, int level)
    {
        int length = Model.Compare(_compare);
        UInt128 fingerprint = XxHash128.HashToUInt128(_compare.AsSpan(0, length));
        if (!known.Add(fingerprint, level, parent, letter))
            return;
        Model.Write(_next.Add());
        Found.Add(fingerprint);
        int property = Model.Probe();
        if (property >= 0)
            Probed.Add((fingerprint, property));
    }

    /// <summary>The level is done: what was next becomes present.</summary>
    public void Turn()
    {
        (_present, _next) = (_next, _present);
        _next.Clear();
        Found.Clear();
    }

    private void Note(Seen seen)
    {
        if (Violation is not { } before || seen.IsBefore(before))
            Violation = seen;
    }
}
