using System.Linq;

namespace LubeController.Analysis.Specification;

/// <summary>The state in one line that a person can read; alarms that are normal and gone are left out.</summary>
internal static class SpecStateText
{
    internal static string Describe(SpecState state)
    {
        string from = state.Phase == Phase.Prime ? $" from {PhaseWords.NameOf(state.CameFrom)}" : "";
        string rest = $"rest {state.Rest.ElapsedMs} ms, {state.Rest.ShaftPulses} pulses{(state.Rest.AfterFailure ? ", after failure" : "")}";
        string clocks = $"in this phase {state.PhaseMs} ms, overdue {state.Rest.OverdueMs} ms, pump off {state.Pump.OffMs} ms, "
            + $"ready in {state.ReadyMs} ms, shaft still {state.Shaft.StillMs} ms, lost {state.Shaft.LostMs} ms";
        string switches = string.Join(", ", state.Switches.Select((one, index) => $"switch {index} {(one.Filter.Level ? "on" : "off")}"
            + $"{(one.Filter.Known ? "" : ", no baseline")}, {one.TimerMs} ms, {one.RetriesUsed} retries used, allowance {one.AllowanceMs} ms"));
        string alarms = string.Join(", ", AlarmTable.All.Select(rule => Describe(state, rule)).Where(text => text.Length > 0));
        return $"{PhaseWords.NameOf(state.Phase)}{from}; pump {(state.Pump.On ? "on" : "off")}; {Describe(state.Dose, state.Line)}; {rest}; {clocks}; "
            + $"{(switches.Length == 0 ? "no switch" : switches)}; {(alarms.Length == 0 ? "no alarm" : alarms)}";
    }

    private static string Describe(DoseProgress dose, LineState line)
    {
        string byPressure = line.Step == PressureStep.None && line.Cycles == 0
            ? ""
            : $", {line.Step} for {line.HeldMs} ms held, {line.VentingMs} ms venting, {line.VentedMs} ms vented, {line.Cycles} pressure cycles";
        return $"dose {dose.Count} counted, {dose.PumpOnMs} ms{(dose.Pending ? ", pending" : "")}{(dose.Try ? ", a new try" : "")}"
            + $"{(dose.PositionKnown ? "" : ", position unknown")}{byPressure}";
    }

    private static string Describe(SpecState state, AlarmRule rule)
    {
        AlarmState alarm = state.Alarm(rule.Id);
        if (!alarm.Stands && alarm.Lifecycle == Lifecycle.Normal)
            return "";
        string shelved = alarm.Lifecycle == Lifecycle.Shelved ? $" {alarm.ShelvedMs} ms" : "";
        return $"{rule.Name} {LifecycleWords.NameOf(alarm.Lifecycle)}{shelved}{(alarm.Active ? " active" : "")}"
            + $"{(alarm.Latched ? " latched" : "")}{(state.FirstUp == rule.Id ? " first-up" : "")}";
    }
}
