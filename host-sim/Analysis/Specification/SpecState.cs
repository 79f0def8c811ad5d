namespace LubeController.Analysis.Specification;

/// <summary>The whole state between two scans, as data that the rules read and change. Only durations are held, never a time of day.</summary>
internal sealed class SpecState
{
    internal Phase Phase;

    /// <summary>The phase in which prime was pressed.</summary>
    internal Phase CameFrom;

    /// <summary>Time in this phase since it was entered or power came, up to the longest that matters in it, ms.</summary>
    internal int PhaseMs;

    internal AlarmId? FirstUp;
    internal DoseProgress Dose;
    internal RestState Rest;
    internal ShaftState Shaft;
    internal PumpState Pump;
    internal LineState Line;
    internal RestartState Restarts;
    internal Levels Levels;

    /// <summary>Remaining ready delay of the cycle switches, ms.</summary>
    internal int ReadyMs;

    /// <summary>Time in the lamp's flashing, ms.</summary>
    internal int LampMs;

    /// <summary>The supply was below its limit and has not come back above its hysteresis.</summary>
    internal bool SupplyLow;

    /// <summary>The same of the lubricant's temperature.</summary>
    internal bool Cold;

    internal readonly SwitchState[] Switches;
    internal readonly AlarmState[] Alarms;

    /// <summary>The state where the memory holds none: a dose is due, and waits for the restart delay only.</summary>
    internal SpecState(SpecSettings settings)
    {
        Dose.Pending = true;
        Pump.OffMs = Durations.JustBeyond(settings.RunOnMs);
        Switches = new SwitchState[settings.Switches.Count];
        for (int index = 0; index < Switches.Length; index++)
        {
            Switches[index] = new SwitchState
            {
                SinceOnMs = settings.ShortestPulseIntervalMs,
                SinceOffMs = settings.ShortestPulseIntervalMs,
                AllowanceMs = index == settings.DoseEndingSwitch ? settings.FirstPulseAllowanceMs : 0,
            };
        }

        Alarms = new AlarmState[AlarmTable.All.Count];
        for (int index = 0; index < Alarms.Length; index++)
            Alarms[index] = new AlarmState();
    }

    internal AlarmState Alarm(AlarmId alarm) => Alarms[(int)alarm];
}
