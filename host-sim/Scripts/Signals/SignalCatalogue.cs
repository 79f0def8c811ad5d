using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;

namespace LubeController.Scripts.Signals;

/// <summary>Every signal that a run of one plant under one controller records.</summary>
public sealed class SignalCatalogue
{
    private readonly Dictionary<string, SignalInfo> _byName;

    /// <summary>Makes a catalogue.</summary>
    /// <exception cref="ArgumentException">A name stands twice.</exception>
    public SignalCatalogue(IEnumerable<SignalInfo> signals)
    {
        Signals = signals.ToArray();
        _byName = Signals.ToDictionary(signal => signal.Name, StringComparer.Ordinal);
    }

    /// <summary>The signals in order of recording.</summary>
    public IReadOnlyList<SignalInfo> Signals { get; }

    /// <summary>The signals that a trace defines, whether anything is recorded yet or not.</summary>
    public static SignalCatalogue Of(Trace trace) =>
        new(trace.Signals.Select(signal => new SignalInfo(signal.Name, signal.Kind, signal.Unit, signal.Labels)));

    /// <summary>The signal of a name, or null.</summary>
    public SignalInfo? Find(string name) => _byName.GetValueOrDefault(name);
}
