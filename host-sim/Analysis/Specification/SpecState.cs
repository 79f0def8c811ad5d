using System;
using System.Linq;

namespace LubeController.Analysis.Specification;

/// <summary>The progress of the dose that runs, is pending or comes next.</summary>
public record struct DoseProgress
{
    /// <summary>Whether an interrupted dose waits to be resumed.</summary>
    public bool Pending;

    /// <summary>Whether the running dose is a new try from failed.</summary>
    public bool Try;

    /// <summary>Pulses counted; in rest the credit of run-on pulses.</summary>
    public int Count;

    /// <summary>Pump-on time of this dose, ms.</summary>
    public long PumpOnMs;

    /// <summary>Whether the divider's position is known, so that every pulse is a cycle.</summary>
    public bool PositionKnown;

    /// <summary>Whether the first pulse has come: of this dose, or the one that opened counting again.</summary>
    public bool FirstPulseSeen;
}

/// <summary>Durations, ms, and counts that are no dose's.</summary>
public record struct Clocks
{
    /// <summary>No rest has to be waited for, as no valid state was found.</summary>
    public bool NoRest;

    /// <summary>Elapsed time of this rest.</summary>
    public long RestMs;

    /// <summary>Shaft pulses of this rest.</summary>
    public long RestPulses;

    /// <summary>Remaining restart delay.</summary>
    public int RestartDelayMs;

    /// <summary>Remaining retry pause.</summary>
    public int PauseMs;

    /// <summary>Time in prime or in output test.</summary>
    public int LimitedMs;

    /// <summary>Powered time since the last completed dose.</summary>
    public long OverdueMs;

    /// <summary>Time since the pump went off, up to just beyond the run-on time.</summary>
    public int PumpOffMs;

    /// <summary>Remaining ready delay.</summary>
    public int ReadyMs;

    /// <summary>Time since the last shaft pulse, up to the shaft timeout.</summary>
    public int ShaftStillMs;

    /// <summary>The same, counted while the machine runs only.</summary>
    public int ShaftLostMs;
}

/// <summary>The debounced levels that are not cycle switches.</summary>
public record struct Levels
{
    /// <summary>Machine running.</summary>
    public InputFilter MachineRunning;

    /// <summary>Reservoir low.</summary>
    public InputFilter Low;

    /// <summary>Reservoir empty.</summary>
    public InputFilter Empty;

    /// <summary>Pump overload.</summary>
    public InputFilter Overload;

    /// <summary>Operating stop.</summary>
    public InputFilter Stop;

    /// <summary>Start button.</summary>
    public InputFilter Start;

    /// <summary>Acknowledge button.</summary>
    public InputFilter Acknowledge;

    /// <summary>Reset button.</summary>
    public InputFilter Reset;

    /// <summary>Dose-now button.</summary>
    public InputFilter DoseNow;

    /// <summary>Prime button.</summary>
    public InputFilter Prime;

    /// <summary>Output test button.</summary>
    public InputFilter OutputTest;
}

/// <summary>One cycle switch.</summary>
public record struct SwitchState
{
    /// <summary>Its debounced level.</summary>
    public InputFilter Filter;

    /// <summary>Whether its baseline is taken, so that changes are edges.</summary>
    public bool Baseline;

    /// <summary>Pump-on time of the timeout under way, ms.</summary>
    public long TimerMs;

    /// <summary>Retries used.</summary>
    public int RetriesUsed;

    /// <summary>Remaining first-pulse allowance, ms; the dose-ending switch's only.</summary>
    public int AllowanceMs;
}

/// <summary>One alarm.</summary>
public record struct AlarmState
{
    /// <summary>Its condition with delays.</summary>
    public DelayFilter Condition;

    /// <summary>Whether its condition is present.</summary>
    public bool Active;

    /// <summary>Whether its latch is set.</summary>
    public bool Latched;

    /// <summary>Its lifecycle state.</summary>
    public Lifecycle Lifecycle;

    /// <summary>Remaining shelving time, ms.</summary>
    public int ShelvedMs;

    /// <summary>Whether it stands: active or latched.</summary>
    public readonly bool Stands => Active || Latched;
}

/// <summary>
/// The whole state between two scans. Two states are equal when all their values are; only durations are held, never a time
/// of day. A snapshot is never changed by the specification that gave it.
/// </summary>
public sealed class SpecState : IEquatable<SpecState>
{
    internal Phase Phase;
    internal Phase CameFrom;
    internal bool Pump;
    internal AlarmId? FirstUp;
    internal DoseProgress Dose;
    internal Clocks Clocks;
    internal Levels Levels;
    internal SwitchState[] Switches;
    internal AlarmState[] Alarms;

    internal SpecState(int switches)
    {
        Switches = new SwitchState[switches];
        Alarms = new AlarmState[AlarmTable.All.Count];
    }

    internal SpecState Copy()
    {
        var copy = (SpecState)MemberwiseClone();
        copy.Switches = [.. Switches];
        copy.Alarms = [.. Alarms];
        return copy;
    }

    /// <inheritdoc/>
    public bool Equals(SpecState? other) => other is not null && Phase == other.Phase && CameFrom == other.CameFrom
        && Pump == other.Pump && FirstUp == other.FirstUp && Dose == other.Dose && Clocks == other.Clocks
        && Levels == other.Levels && Switches.AsSpan().SequenceEqual(other.Switches) && Alarms.AsSpan().SequenceEqual(other.Alarms);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as SpecState);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Phase);
        hash.Add(CameFrom);
        hash.Add(Pump);
        hash.Add(FirstUp);
        hash.Add(Dose);
        hash.Add(Clocks);
        hash.Add(Levels);
        foreach (SwitchState one in Switches)
            hash.Add(one);
        foreach (AlarmState alarm in Alarms)
            hash.Add(alarm);
        return hash.ToHashCode();
    }

    /// <summary>The state in one line that a person can read; alarms that are normal and gone are left out.</summary>
    public override string ToString()
    {
        string from = Phase == Phase.Prime ? $" from {PhaseWords.Of(CameFrom)}" : "";
        string dose = $"dose {Dose.Count} counted, {Dose.PumpOnMs} ms{(Dose.Pending ? ", pending" : "")}{(Dose.Try ? ", a new try" : "")}"
            + $"{(Dose.PositionKnown ? "" : ", position unknown")}{(Dose.FirstPulseSeen ? "" : ", first pulse awaited")}";
        string rest = $"rest {(Clocks.NoRest ? "none" : $"{Clocks.RestMs} ms, {Clocks.RestPulses} pulses")}, restart delay {Clocks.RestartDelayMs} ms";
        string clocks = $"pause {Clocks.PauseMs} ms, limited {Clocks.LimitedMs} ms, overdue {Clocks.OverdueMs} ms, pump off {Clocks.PumpOffMs} ms, "
            + $"ready in {Clocks.ReadyMs} ms, shaft still {Clocks.ShaftStillMs} ms, lost {Clocks.ShaftLostMs} ms";
        string switches = string.Join(", ", Switches.Select((one, index) => $"switch {index} {(one.Filter.Level ? "on" : "off")}"
            + $"{(one.Baseline ? "" : ", no baseline")}, {one.TimerMs} ms, {one.RetriesUsed} retries used, allowance {one.AllowanceMs} ms"));
        string alarms = string.Join(", ", Alarms.Select(Describe).Where(text => text.Length > 0));
        return $"{PhaseWords.Of(Phase)}{from}; pump {(Pump ? "on" : "off")}; {dose}; {rest}; {clocks}; "
            + $"{(switches.Length == 0 ? "no switch" : switches)}; {(alarms.Length == 0 ? "no alarm" : alarms)}";
    }

    private string Describe(AlarmState alarm, int index)
    {
        if (!alarm.Stands && alarm.Lifecycle == Lifecycle.Normal)
            return "";
        string name = AlarmTable.Of((AlarmId)index).Name;
        string shelved = alarm.Lifecycle == Lifecycle.Shelved ? $" {alarm.ShelvedMs} ms" : "";
        return $"{name} {LifecycleWords.Of(alarm.Lifecycle)}{shelved}{(alarm.Active ? " active" : "")}"
            + $"{(alarm.Latched ? " latched" : "")}{(FirstUp == (AlarmId)index ? " first-up" : "")}";
    }
}
