namespace LubeController.Core;

/// <summary>When the next dose begins: at the end of the rest, or of a delay where a dose is pending or a reset led out of failed.</summary>
internal sealed class DoseSchedule
{
    private readonly Settings _settings;
    private readonly AlarmList _alarms;
    private readonly Sensors _sensors;
    private readonly PhaseMachine _phases;
    private readonly DoseProgress _dose;
    private readonly RestClock _rest;

    public DoseSchedule(Settings settings, AlarmList alarms, Sensors sensors, PhaseMachine phases, DoseProgress dose, RestClock rest)
    {
        _settings = settings;
        _alarms = alarms;
        _sensors = sensors;
        _phases = phases;
        _dose = dose;
        _rest = rest;
    }

    /// <summary>Whether the next dose, or the next try, is due.</summary>
    public bool IsDue
    {
        get
        {
            if (!RestMatters || (DelayCounts && _phases.ElapsedMs < DelayMs))
                return false;
            return _dose.Pending || _rest.IsOver(ShaftIsLost);
        }
    }

    /// <summary>Rest runs on in every phase, and where a turning shaft belies a machine said to stand, once a dose is completed; an interrupted dose waits for its restart delay instead.</summary>
    private bool RestCounts =>
        !_dose.Pending && (_sensors.Held.MachineRunning || _sensors.Shaft.IsContradicted || !_settings.Is(SettingField.RestOnlyWhileRunning));

    /// <summary>Whether the end of the rest would do anything in this phase.</summary>
    private bool RestMatters => _phases.Phase == Phase.Rest
        || (_phases.Phase == Phase.Failed && _settings[SettingField.NewTryDelayMs] > 0 && !_alarms.InterlockStands);

    /// <summary>Whether an end of the rest must be scanned. A user's rule is asked in every phase, so that rule-fault does not depend on when it is looked for.</summary>
    private bool RestIsWatched => RestCounts && (RestMatters || _settings.RestMode == RestMode.Rule);

    private bool DelayCounts => _dose.Pending || _phases.IsAfterFailure;

    private int DelayMs => _settings[_phases.Phase == Phase.Failed ? SettingField.NewTryDelayMs : SettingField.RestartDelayMs];

    private bool ShaftIsLost => _alarms.IsActive(AlarmId.ShaftSignalLost);

    public void Advance(int elapsedMs, int shaftPulses)
    {
        if (RestCounts)
            _rest.Advance(elapsedMs, shaftPulses, _sensors.Held);
    }

    public int DeadlineMs()
    {
        int deadline = Saturating.Never;
        if (RestMatters && DelayCounts && _phases.ElapsedMs < DelayMs)
            deadline = DelayMs - _phases.ElapsedMs;
        if (RestIsWatched)
            deadline = Saturating.Min(deadline, _rest.DeadlineMs(ShaftIsLost));
        return deadline;
    }

    public int DeadlineShaftPulses() => RestIsWatched ? _rest.DeadlineShaftPulses() : Saturating.Never;
}
