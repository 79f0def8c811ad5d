using System;
using System.Collections.Generic;
using LubeController.Emulator;
using LubeController.Scripts.Running;

namespace LubeController.Scripts.Steps;

/// <summary>
/// Tells a bench what to do when, during one run. The bench asks for <see cref="NextDueUs"/>, takes every action due
/// with <see cref="TryTake"/>, and calls <see cref="Observe"/> whenever recorded signals may have changed.
/// </summary>
public sealed class StepSchedule
{
    private readonly IReadOnlyList<Step> _steps;
    private readonly Trace _trace;
    private readonly PriorityQueue<(Step Step, StepAction Action), (long TimeUs, int Order)> _due = new();
    private readonly List<Step> _watched = [];
    private readonly List<FiredStep> _fired = [];
    private readonly Func<string, double> _lastValue;
    private int _order;

    /// <summary>Begins a run at time 0.</summary>
    /// <param name="steps">The steps of the script.</param>
    /// <param name="trace">The run's trace: triggers read it, and each step carried out is noted in it.</param>
    public StepSchedule(IReadOnlyList<Step> steps, Trace trace)
    {
        ArgumentNullException.ThrowIfNull(steps);
        _steps = steps;
        _trace = trace;
        _lastValue = LastValue;
        foreach (Step step in steps)
        {
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
    public bool TryTake(long nowUs, out StepAction action)
    {
        action = null!;
        if (NextDueUs > nowUs)
            return false;
        (Step step, StepAction due) = _due.Dequeue();
        if (ReferenceEquals(due, step.Action))
            Fire(step, nowUs);
        else
            _trace.Note(nowUs, "step", due.Text);
        action = due is PressButton press ? new MoveButton(press.Button, Down: true) : due;
        if (due is PressButton pressed)
            Enqueue(step, new MoveButton(pressed.Button, Down: false), nowUs + pressed.ForUs);
        return true;
    }

    private void Fire(Step fired, long nowUs)
    {
        _fired.Add(new FiredStep(fired.Index, nowUs));
        _trace.Note(nowUs, "step", fired.Name.Length > 0 ? $"{fired.Name}: {fired.Action.Text}" : fired.Action.Text);
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

    private void Enqueue(Step step, StepAction action, long timeUs) => _due.Enqueue((step, action), (timeUs, _order++));

    private double LastValue(string name)
    {
        Signal? signal = _trace.Find(name);
        return signal is { Count: > 0 } ? signal.Value(signal.Count - 1) : double.NaN;
    }
}
