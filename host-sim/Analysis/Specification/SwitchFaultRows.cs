namespace LubeController.Analysis.Specification;

/// <summary>
/// The two rows that are one alarm in the rules, <c>cycle-switch-fault</c>: it is worse where the dose-ending switch is at fault.
/// A reset clears neither row before both conditions have ended.
/// </summary>
internal static class SwitchFaultRows
{
    internal static bool Contain(AlarmId alarm) => alarm is AlarmId.CycleSwitchFault or AlarmId.OtherSwitchFault;

    internal static AlarmId RowOf(int cycleSwitch, SpecSettings settings) =>
        cycleSwitch == settings.DoseEndingSwitch ? AlarmId.CycleSwitchFault : AlarmId.OtherSwitchFault;

    internal static AlarmId OtherThan(AlarmId row) =>
        row == AlarmId.CycleSwitchFault ? AlarmId.OtherSwitchFault : AlarmId.CycleSwitchFault;

    /// <summary>Whether a switch of that row is found wrong now.</summary>
    internal static bool IsFound(AlarmId row, SpecSettings settings, SpecState state)
    {
        for (int index = 0; index < state.Switches.Length; index++)
        {
            if (RowOf(index, settings) == row && state.Switches[index].IsWrong)
                return true;
        }

        return false;
    }

    /// <summary>One alarm has one category: what is a failure by the dose-ending switch is not announced as less by another.</summary>
    internal static bool HasBecomeWorse(SpecState state, AlarmId alarm) =>
        alarm == AlarmId.OtherSwitchFault && state.Alarm(AlarmId.CycleSwitchFault).Stands;

    /// <summary>
    /// An alarm that is active and acknowledged is raised again only where it becomes a failure: who has seen the fault of the
    /// dose-ending switch, be it latched only, has seen that of another, but not the other way round.
    /// </summary>
    internal static bool HasBeenSeen(SpecState state, AlarmId began) =>
        state.Alarm(OtherThan(began)) is { Active: true, Lifecycle: Lifecycle.Acknowledged }
        && (began == AlarmId.OtherSwitchFault || state.Alarm(began).Lifecycle == Lifecycle.Latched);
}
