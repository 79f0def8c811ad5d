namespace LubeController.Analysis.Specification;

/// <summary>What each alarm is raised by.</summary>
internal sealed class AlarmConditions(SpecSettings settings, SpecState state, SpecScan scan, LinePressure line, Shaft shaft)
{
    /// <summary>
    /// Whether an alarm's own rule sees its condition; false where only a witness can tell. An input whose level is not yet
    /// known after power-up leaves the condition as it stood, and so does what only a running pump can show: null.
    /// </summary>
    internal bool? IsPresent(AlarmRule rule) => rule.Id switch
    {
        AlarmId.LineOverpressure => line.IsOverLimit ? true : line.LimitIsKnown ? false : null,
        AlarmId.ReservoirEmpty => state.Levels.Empty.Accepted,
        AlarmId.PumpOverload => state.Pump.StandsStill ? true : state.Levels.Overload.Accepted,
        AlarmId.LubricationOverdue => state.Rest.OverdueMs >= settings.OverdueMs,
        AlarmId.ShaftSignalLost => settings.HasShaft && shaft.MachineRuns && state.Shaft.LostMs >= settings.ShaftTimeoutMs,
        AlarmId.ScanOverrun => scan.Inputs.ScanLate,
        AlarmId.LubricantCold => state.Cold,
        AlarmId.SupplyLow => state.SupplyLow,
        AlarmId.ReservoirLow => state.Levels.Low.Accepted,
        AlarmId.PressureSignalLost => line.SignalIsLost,
        AlarmId.SensorsDisagree => state.Shaft.TurnsOn,
        AlarmId.CycleSwitchFault or AlarmId.OtherSwitchFault => SwitchFaultRows.IsFound(rule.Id, settings, state),
        _ => rule.OnlyARunningPumpShows ? null : false,
    };
}
