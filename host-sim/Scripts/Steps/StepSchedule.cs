using System;
using System.Collections.Generic;
using LubeController.Emulator;

namespace LubeController.Scripts.Steps;

/// <summary>
/// Tells a bench what to do when, during one run. The bench asks for <see cref="NextDueUs"/>, takes every action due
/// with <see cref="TryTake"/>, and calls <see cref="Observe"/> whenever recorded signals may have changed.
/// </summary>
public sealed class StepSchedule
{
    private readonly IReadOnlyList<Step> _steps;
    private readonly Trace _trace;
    private readonly PriorityQueue<(Step Step, StepAction Action, Growth? Growth), (long TimeUs, int Order)> _due = new();
    private readonly Dictionary<(string Fault, string Part), Growth> _growing = [];
    private readonly List<Step> _watched = [];
    private readonly List<FiredStep> _fired = [];
    private readonly Func<string, double> _lastValue;
    private int _order;

    /// <summary>Begins a run at time 0.</summary>
    /// <param name="steps">The steps of the script, draws made.</param>
    /// <param name="trace">The run's trace: triggers read it, and each step carried out is noted in it.</param>
    public StepSchedule(IReadOnlyList<Step> steps, Trace trace)
    {
        ArgumentNullException.ThrowIfNull(steps);
        _steps = steps;
        _trace = trace;
        _lastValue = LastValue;
        foreach (Step step in steps)
        {
            if (step.Time is AtDrawnTime)
                throw new ArgumentException($"the step {step.Label} leaves its time to the seed: draw it first", nameof(steps));
            if (step.Time is AtTime at)
                Enqueue(step, step.Action, at.TimeUs);
            else if (step.Time is AfterTrigger { SinceStep: < 0 })
                _watched.Add(step);
        }
    }

    /// <summary>Virtual time of the next action, microseconds; <see cref="long.MaxValue"/> if none is due.</summary>
    public long NextDueUs => _due.TryPeek(out _, out (long TimeUs, int) next) ? next.TimeUs : long.MaxValue;

    /// <summary>Whether any step still waits for something to become true.</summary>
    public bool IsWatching => _watched.Count > 0;

    /// <summary>The steps carried out so far, in order of time.</summary>
    public IReadOnlyList<FiredStep> Fired => _fired;

    /// <summary>Looks whether what steps wait for is true now.</summary>
    public void Observe(long nowUs)
    {
        for (int index = 0; index < _watched.Count; index++)
        {
            Step step = _watched[index];
            var time = (AfterTrigger)step.Time;
            if (!time.Trigger.IsTrue(_lastValue))
                continue;
            _watched.RemoveAt(index--);
            Enqueue(step, step.Action, nowUs + time.DelayUs);
        }
    }

    /// <summary>Takes the next action due at or before a time; false where there is none.</summary>
    /// <param name="nowUs">The present, microseconds.</param>
    /// <param name="step">The step that the action is part of.</param>
    /// <param name="action">The action.</param>
    public bool TryTake(long nowUs, out Step step, out StepAction action)
    {
        while (NextDueUs <= nowUs)
        {
            (step, StepAction due, Growth? growth) = _due.Dequeue();
            if (growth != null)
            {
                if (!TryGrow(growth, nowUs, out action))
                    continue;
                return true;
            }

            if (ReferenceEquals(due, step.Action))
                Fire(step, nowUs);
            else
                _trace.Note(nowUs, "step", due.Text);
            action = Begin(step, due, nowUs);
            return true;
        }

        step = null!;
        action = null!;
        return false;
    }

    /// <summary>What a bench does of an action now; what it does of it later becomes due.</summary>
    private StepAction Begin(Step step, StepAction due, long nowUs)
    {
        switch (due)
        {
            case PressButton press:
                Enqueue(step, new MoveButton(press.Button, Down: false), nowUs + press.ForUs);
                return new MoveButton(press.Button, Down: true);
            case HealFault heal:
                StopGrowing(heal.Kind.Name, heal.AnyPart ? null : heal.Part);
                return heal;
            case SetFault { OverUs: > 0, MagnitudeSi: not null, Kind.HarmlessMagnitude: { } harmless } gradual:
                var growth = new Growth(step, gradual, nowUs);
                _growing[(gradual.Kind.Name, gradual.Part)] = growth;
                Enqueue(growth);
                return gradual with { MagnitudeSi = harmless };
            case SetFault sudden:
                StopGrowing(sudden.Kind.Name, sudden.Part);
                return sudden;
            default:
                return due;
        }
    }

    private bool TryGrow(Growth growth, long nowUs, out StepAction action)
    {
        (string, string) key = (growth.Fault.Kind.Name, growth.Fault.Part);
        bool goesOn = _growing.TryGetValue(key, out Growth? present) && ReferenceEquals(present, growth);
        action = goesOn ? growth.Next() : null!;
        if (!goesOn)
            return false;
        if (!growth.IsOver)
        {
            Enqueue(growth);
            return true;
        }

        _growing.Remove(key);
        _trace.Note(nowUs, "step", action.Text);
        return true;
    }

    private void StopGrowing(string fault, string? part)
    {
        foreach ((string Fault, string Part) key in _growing.Keys)
        {
            if (key.Fault == fault && (part == null || key.Part == part))
                _growing.Remove(key);
        }
    }

    private void Fire(Step fired, long nowUs)
    {
        _fired.Add(new FiredStep(fired.Index, nowUs));
        string drawn = fired.Drawn.Length > 0 ? $" [drawn: {fired.Drawn}]" : "";
        _trace.Note(nowUs, "step", (fired.Name.Length > 0 ? $"{fired.Name}: {fired.Action.Text}" : fired.Action.Text) + drawn);
        bool armed = false;
        foreach (Step step in _steps)
        {
            if (step.Time is AfterStep after && after.Step == fired.Index)
            {
                Enqueue(step, step.Action, nowUs + after.DelayUs);
            }
            else if (step.Time is AfterTrigger trigger && trigger.SinceStep == fired.Index)
            {
                _watched.Add(step);
                armed = true;
            }
        }

        // Quiet time may be skipped after this, so what is true already must count at once.
        if (armed)
            Observe(nowUs);
    }

    private void Enqueue(Step step, StepAction action, long timeUs) => _due.Enqueue((step, action, null), (timeUs, _order++));

    private void Enqueue(Growth growth) => _due.Enqueue((growth.Step, growth.Fault, growth), (growth.NextUs, _order++));

    private double LastValue(string name)
    {
        Signal? signal = _trace.Find(name);
        return signal is { Count: > 0 } ? signal.Value(signal.Count - 1) : double.NaN;
    }
}
