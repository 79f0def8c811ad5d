using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What an exploration of the core came by.</summary>
public sealed class CoreCoverage
{
    private static readonly int Phases = Enum.GetValues<Phase>().Length;

    private readonly bool[] _phases = new bool[Phases];
    private readonly bool[] _transitions = new bool[Phases * Phases];

    /// <summary>Alarms that stood, one bit each.</summary>
    public int Alarms { get; private set; }

    /// <summary>Properties that were violated where the search goes on, one bit for each <see cref="CoreProperty"/>.</summary>
    public int Violated { get; internal set; }

    /// <summary>Whether a phase was reached.</summary>
    public bool Reached(Phase phase) => _phases[(int)phase];

    /// <summary>The changes of phase that were seen.</summary>
    public IEnumerable<(Phase From, Phase To)> Transitions
    {
        get
        {
            for (int index = 0; index < _transitions.Length; index++)
            {
                if (_transitions[index])
                    yield return ((Phase)(index / Phases), (Phase)(index % Phases));
            }
        }
    }

    /// <summary>Adds what another one came by.</summary>
    public void Add(CoreCoverage other)
    {
        ArgumentNullException.ThrowIfNull(other);
        Alarms |= other.Alarms;
        Violated |= other.Violated;
        Add(_phases, other._phases);
        Add(_transitions, other._transitions);
    }

    internal void Note(Phase from, Controller core)
    {
        _phases[(int)core.Phase] = true;
        if (from != core.Phase)
            _transitions[((int)from * Phases) + (int)core.Phase] = true;
        int standing = core.Alarms.Standing;
        if ((standing & ~Alarms) != 0)
            Alarms |= standing;
    }

    private static void Add(bool[] to, bool[] from)
    {
        for (int index = 0; index < to.Length; index++)
            to[index] |= from[index];
    }
}
