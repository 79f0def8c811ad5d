using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.SettingsFiles;
using LubeController.Plant.Description;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Signals;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>
/// A bench without a plant, for testing what stands around a bench: it records the points it is given, carries out steps
/// by the same schedule as every bench, and tells each action to whoever listens. Ships beside the real ones because
/// users test too.
/// </summary>
public sealed class FakeScriptBench : IScriptBench
{
    private readonly List<(string Name, long TimeUs, double Value)> _points = [];
    private readonly List<SignalInfo> _signals = [];
    private readonly List<BenchFault> _faults = [];

    /// <summary>Hears every action as it is carried out: the time, the action, and the trace to record its effect in.</summary>
    public Action<long, StepAction, Trace>? OnAction { get; set; }

    /// <summary>Names of the faults that take no effect.</summary>
    public IReadOnlyList<string> IdleFaults { get; set; } = [];

    /// <summary>Microseconds by which runs end before their duration.</summary>
    public long EndsEarlyUs { get; set; }

    /// <summary>Adds a signal that is on or off.</summary>
    public FakeScriptBench WithOnOff(string name) => With(new SignalInfo(name, SignalKind.OnOff, "1", null));

    /// <summary>Adds a signal that counts.</summary>
    public FakeScriptBench WithCount(string name) => With(new SignalInfo(name, SignalKind.Step, "1", null));

    /// <summary>Adds a signal that is one of some words.</summary>
    public FakeScriptBench WithWord(string name, params string[] words) => With(new SignalInfo(name, SignalKind.Step, "1", words));

    /// <summary>Adds a quantity that moves in straight lines, in an SI unit.</summary>
    public FakeScriptBench WithLinear(string name, string siUnit) => With(new SignalInfo(name, SignalKind.Linear, siUnit, null));

    /// <summary>Adds a fault.</summary>
    public FakeScriptBench WithFault(string name, IReadOnlyList<string> parts, QuantityRange? magnitude = null, double? preset = null) =>
        With(new BenchFault(name, parts, magnitude, preset));

    /// <summary>Adds a fault with all that can be said of one.</summary>
    public FakeScriptBench With(BenchFault fault)
    {
        _faults.Add(fault);
        return this;
    }

    /// <summary>Adds a point to record, in the signal's SI unit. Each signal should have one at time 0.</summary>
    public FakeScriptBench At(long timeUs, string name, double value)
    {
        _points.Add((name, timeUs, value));
        return this;
    }

    /// <inheritdoc/>
    public BenchVocabulary Describe(PlantDescription plant, ControlSettings settings) => new(new SignalCatalogue(_signals), _faults);

    /// <inheritdoc/>
    public RunResult Run(BenchScript script)
    {
        ArgumentNullException.ThrowIfNull(script);
        script = script.Drawn();
        var trace = new Trace();
        foreach (SignalInfo signal in _signals)
            trace.Define(signal.Name, signal.Kind, signal.SiUnit, signal.Labels);
        var schedule = new StepSchedule(script.Steps, trace);
        long end = script.DurationUs - EndsEarlyUs;
        long scans = 0;
        var idle = new List<Step>();
        bool bound = false;
        var points = new Queue<(string Name, long TimeUs, double Value)>(_points.OrderBy(point => point.TimeUs));
        while (!bound)
        {
            long next = Math.Min(points.TryPeek(out (string Name, long TimeUs, double Value) point) ? point.TimeUs : long.MaxValue, schedule.NextDueUs);
            if (next > end)
                break;
            while (points.TryPeek(out point) && point.TimeUs == next)
                trace.Find(points.Dequeue().Name)!.Record(next, point.Value);
            schedule.Observe(next);
            while (schedule.TryTake(next, out Step step, out StepAction action))
            {
                if (action is SetFault fault && IdleFaults.Contains(fault.Kind.Name))
                    idle.Add(step);
                OnAction?.Invoke(next, action, trace);
            }

            scans++;
            bound = scans > script.ScanBound;
            if (bound)
                end = next;
        }

        trace.End(end);
        return new RunResult { Trace = trace, FiredSteps = schedule.Fired, IdleFaults = idle, ScansExecuted = Math.Max(scans, 1), TicksCovered = end / (script.ScanPeriodMs * 1000L), ScanBoundReached = bound };
    }

    private FakeScriptBench With(SignalInfo signal)
    {
        _signals.Add(signal);
        return this;
    }
}
