using System;
using System.Collections.Generic;

namespace LubeController.Emulator;

/// <summary>Something that happened at one instant of a run, in words a person reads.</summary>
/// <param name="TimeUs">Virtual time in microseconds since the start of the run.</param>
/// <param name="Kind">What sort of happening: <c>phase</c>, <c>alarm</c>, <c>pulse</c>, <c>output</c>, <c>press</c>, <c>fault</c>, <c>step</c>, <c>power</c>.</param>
/// <param name="Text">The happening itself, for instance <c>divider-stalled raised</c>.</param>
public sealed record TraceEvent(long TimeUs, string Kind, string Text);

/// <summary>Everything one run recorded: signals in order of definition, and events in order of time.</summary>
public sealed class Trace
{
    private readonly List<Signal> _signals = [];
    private readonly Dictionary<string, Signal> _byName = new(StringComparer.Ordinal);
    private readonly List<TraceEvent> _events = [];

    /// <summary>All signals, in order of definition, which is the same for every run of one plant.</summary>
    public IReadOnlyList<Signal> Signals => _signals;

    /// <summary>All events, in order of time and, within one instant, of occurrence.</summary>
    public IReadOnlyList<TraceEvent> Events => _events;

    /// <summary>Virtual time at which the run ended, microseconds; it started at 0.</summary>
    public long EndUs { get; private set; }

    /// <summary>Defines a signal.</summary>
    /// <exception cref="ArgumentException">The name is taken.</exception>
    public Signal Define(string name, SignalKind kind, string unit, IReadOnlyList<string>? labels = null)
    {
        var signal = new Signal(name, kind, unit, labels);
        _byName.Add(name, signal);
        _signals.Add(signal);
        return signal;
    }

    /// <summary>The signal of a name, or null.</summary>
    public Signal? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>Adds an event.</summary>
    public void Note(long timeUs, string kind, string text) => _events.Add(new TraceEvent(timeUs, kind, text));

    /// <summary>Closes the run.</summary>
    public void End(long timeUs) => EndUs = timeUs;
}
