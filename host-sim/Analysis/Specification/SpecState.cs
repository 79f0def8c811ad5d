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

    /// <summary>Pump-on time in doses without line pressure, ms.</summary>
    public int PressureMissingMs;
}

/// <summary>Durations, ms, and counts that are no dose's.</summary>
public record struct Clocks
{
    /// <summary>Elapsed time of this rest.</summary>
    public long RestMs;

    /// <summary>Shaft pulses of this rest.</summary>
    public long RestPulses;

    /// <summary>Whether this rest followed failed, so that it lasts the restart delay at least.</summary>
    public bool AfterFailure;

    /// <summary>Time in this phase since it was entered or power came, up to the longest that matters in it.</summary>
    public int PhaseMs;

    /// <summary>Powered time since the last completed dose.</summary>
    public long OverdueMs;

    /// <summary>Time since the pump went off, up to just beyond the run-on time.</summary>
    public int PumpOffMs;

    /// <summary>Remaining ready delay.</summary>
    public int ReadyMs;

    /// <summary>Time since the last shaft pulse, up to the shaft timeout.</summary>
    public int ShaftStillMs;

    /// <summary>The same, counted while the machine runs only. Standing still does not renew it: a machine that runs in bursts would never be told.</summary>
    public int ShaftLostMs;

    /// <summary>Time in which the shaft turned on without machine running.</summary>
    public long RunDownMs;

    /// <summary>Pump-on time without a revolution.</summary>
    public int PumpStillMs;

    /// <summary>Time in the lamp's flashing.</summary>
    public int LampMs;
}

/// <summary>The debounced levels that are not cycle switches.</summary>
public record struct Levels
{
    /// <summary>Machine running.</summary>
    public InputFilter MachineRunning;

    /// <summary>Pressure switch.</summary>
    public InputFilter Pressure;

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

/// <summary>What is held of inputs across scans and power cuts.</summary>
public record struct Held
{
    /// <summary>The supply was below its limit and has not come back above its hysteresis.</summary>
    public bool SupplyLow;

    /// <summary>The same of the temperature.</summary>
    public bool Cold;

    /// <summary>The pump was held by an alarm.</summary>
    public bool PumpHeld;

    /// <summary>The pump was on for too long without a revolution; only a reset ends that.</summary>
    public bool PumpStill;

    /// <summary>The shaft turned on after the run-down, and neither stands nor runs the machine since.</summary>
    public bool ShaftTurnsOn;

    /// <summary>Line pressure is reached.</summary>
    public bool PressureReached;

    /// <summary>The line is vented.</summary>
    public bool Vented;
}

/// <summary>Power-ups that found a saved state.</summary>
public record struct Restarts
{
    /// <summary>Time since power came, ms, up to the save interval.</summary>
    public int PoweredMs;

    /// <summary>How many since the window began.</summary>
    public int Count;

    /// <summary>Powered time since the window began with the first of them, ms, up to the window's length.</summary>
    public int WindowMs;
}

/// <summary>Steps of a dose by pressure.</summary>
public enum PressureStep
{
    /// <summary>None is under way.</summary>
    None,

    /// <summary>Pump off until the line has stood vented.</summary>
    Recharge,

    /// <summary>Pump on until pressure is reached.</summary>
    Pressurise,

    /// <summary>Pump on while pressure must last.</summary>
    Hold,

    /// <summary>Pump off until the line has stood vented; then the pressure cycle counts.</summary>
    Vent,
}

/// <summary>A dose by pressure.</summary>
public record struct LineState
{
    /// <summary>Its step.</summary>
    public PressureStep Step;

    /// <summary>Pressure cycles counted.</summary>
    public int Cycles;

    /// <summary>How long pressure has been held, ms.</summary>
    public int HeldMs;

    /// <summary>How long the dose has waited for the line to stand vented, ms.</summary>
    public int VentingMs;

    /// <summary>How long the line has stood vented, ms.</summary>
    public int VentedMs;
}

/// <summary>One cycle switch.</summary>
public record struct SwitchState
{
    /// <summary>Its debounced level.</summary>
    public InputFilter Filter;

    /// <summary>Pump-on time of doses since its last accepted edge, ms.</summary>
    public long TimerMs;

    /// <summary>Time since its last accepted edge to on, ms, up to the shortest interval; to off.</summary>
    public int SinceOnMs;

    /// <summary>The same for the edge to off.</summary>
    public int SinceOffMs;

    /// <summary>Retries used.</summary>
    public int RetriesUsed;

    /// <summary>First-pulse allowance that its timeout has now, ms; the dose-ending switch's only.</summary>
    public int AllowanceMs;

    /// <summary>Pulses of others since its last accepted edge.</summary>
    public WitnessCounts Witnesses;

    /// <summary>Its chatter.</summary>
    public ChatterState Chatter;

    /// <summary>Another switch has proved it wrong; until reset.</summary>
    public bool Proved;

    /// <summary>It was found wrong and is not believed, until reset has cleared the alarm.</summary>
    public bool Faulty;

    /// <summary>Whether it is found wrong now.</summary>
    public readonly bool IsWrong => Proved || Chatter.On;
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
    internal Held Held;
    internal LineState Line;
    internal Restarts Restarts;
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
        && Levels == other.Levels && Held == other.Held && Line == other.Line && Restarts == other.Restarts
        && Switches.AsSpan().SequenceEqual(other.Switches) && Alarms.AsSpan().SequenceEqual(other.Alarms);

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
        hash.Add(Held);
        hash.Add(Line);
        hash.Add(Restarts);
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
            + $"{(Dose.PositionKnown ? "" : ", position unknown")}"
            + $"{(Line.Step == PressureStep.None && Line.Cycles == 0 ? "" : $", {Line.Step} for {Line.HeldMs} ms held, {Line.VentingMs} ms venting, {Line.VentedMs} ms vented, {Line.Cycles} pressure cycles")}";
        string rest = $"rest {Clocks.RestMs} ms, {Clocks.RestPulses} pulses{(Clocks.AfterFailure ? ", after failure" : "")}";
        string clocks = $"in this phase {Clocks.PhaseMs} ms, overdue {Clocks.OverdueMs} ms, pump off {Clocks.PumpOffMs} ms, "
            + $"ready in {Clocks.ReadyMs} ms, shaft still {Clocks.ShaftStillMs} ms, lost {Clocks.ShaftLostMs} ms";
        string switches = string.Join(", ", Switches.Select((one, index) => $"switch {index} {(one.Filter.Level ? "on" : "off")}"
            + $"{(one.Filter.Known ? "" : ", no baseline")}, {one.TimerMs} ms, {one.RetriesUsed} retries used, allowance {one.AllowanceMs} ms"));
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
