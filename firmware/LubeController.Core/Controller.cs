namespace LubeController.Core;

/// <summary>
/// The control core: one scan cycle as in IEC 61131-3 (copy inputs, <see cref="Scan"/>, copy outputs). It keeps
/// durations and counts, never points in time, so that the wrap of a 32-bit millisecond clock cannot matter and states
/// can be compared. No scan allocates.
/// </summary>
/// <remarks>
/// A scan first lets the elapsed time pass under everything as it stood, then takes the new inputs, then decides. Hence
/// many short scans under unchanged inputs equal one long one, and the core itself, as well as a simulator, may skip quiet
/// time up to <see cref="NextDeadlineMs"/>.
/// </remarks>
public sealed class Controller
{
    private readonly Inputs _inputs;
    private readonly Settings _settings = new Settings();
    private readonly SettingsCheck _check = new SettingsCheck();
    private readonly bool _hasRule;
    private readonly ScanCycle _cycle;
    private readonly StateDoor _door;
    private readonly AlarmList _alarms;
    private readonly ScanEvents _events;
    private bool _restored;
    private bool _eventsReported;

    /// <summary>Makes a core over images that the board owns. Settings that are refused raise settings-invalid.</summary>
    /// <param name="inputs">The input image, rewritten before every scan.</param>
    /// <param name="outputs">The output image, written by every scan.</param>
    /// <param name="settings">The settings; their values are copied.</param>
    /// <param name="rule">A user's rest rule, or null.</param>
    public Controller(Inputs inputs, Outputs outputs, Settings settings, IRestRule? rule)
    {
        _inputs = inputs;
        _hasRule = rule != null;
        _events = new ScanEvents();
        _alarms = new AlarmList(_settings, _events);
        _cycle = new ScanCycle(inputs, outputs, _settings, _events, _alarms, rule);
        _door = new StateDoor(_cycle);
        UseSettings(settings);
        _cycle.Begin();
        _door.Measure();
        PowerUp();
    }

    /// <summary>What the core is doing.</summary>
    public Phase Phase => _cycle.Phases.Phase;

    /// <summary>The alarms.</summary>
    public AlarmList Alarms => _alarms;

    /// <summary>What the latest scan saw and did.</summary>
    public ScanEvents Events => _events;

    /// <summary>Doses completed, saturating.</summary>
    public int DosesCompleted => _cycle.Doses.Completed;

    /// <summary>Presses refused, saturating.</summary>
    public int PressesRefused => _cycle.Presses.Refused;

    /// <summary>Edges counted in the present or pending dose.</summary>
    public int DoseEdges => _cycle.Dose.Edges;

    /// <summary>What a dose by pressure is doing; <see cref="DoseStep.Vent"/> also while one cut short in it is pending.</summary>
    public DoseStep DoseStep => _cycle.Line.Step;

    /// <summary>Pressure cycles counted in the present or pending dose by pressure.</summary>
    public int PressureCycles => _cycle.Line.Cycles;

    /// <summary>Whether a dose was begun and is not completed.</summary>
    public bool DosePending => _cycle.Dose.Pending;

    /// <summary>Whether the divider's position is known; if not, the next pulse only opens the counting.</summary>
    public bool PositionKnown => _cycle.Dose.PositionKnown;

    /// <summary>Doses that began without known position and so gave up to one cycle more than set, saturating.</summary>
    public int OpenedCounts => _cycle.Dose.OpenedCounts;

    /// <summary>Bytes that <see cref="SaveState(byte[])"/> writes; 0 where a rule's state is longer than can be kept, so that none is ever saved.</summary>
    public int StateLength => _door.Length;

    /// <summary>The refusals of the settings handed over last.</summary>
    public SettingsCheck SettingsCheck => _check;

    /// <summary>
    /// Milliseconds, 1 or more, in which no scan would change anything if the inputs stay as they are; the scan at or
    /// after its end must be made. <see cref="Saturating.Never"/> if nothing is due.
    /// </summary>
    public int NextDeadlineMs => _cycle.Span.DeadlineMs;

    /// <summary>Shaft pulses after which a scan must be made, 1 or more; <see cref="Saturating.Never"/> if none matters. Fewer may be handed over in one delta.</summary>
    public int NextDeadlineShaftPulses => _cycle.Span.DeadlinePulses;

    /// <summary>Lowest transmitter reading, millibar, down to which nothing changes.</summary>
    public int QuietPressureLowMbar => _cycle.Sensors.Pressure.QuietLowMbar;

    /// <summary>Highest transmitter reading, millibar, up to which nothing changes.</summary>
    public int QuietPressureHighMbar => _cycle.Sensors.Pressure.QuietHighMbar;

    /// <summary>Lowest supply voltage, millivolts, down to which nothing changes.</summary>
    public int QuietSupplyLowMv => _cycle.Sensors.Supply.QuietLow;

    /// <summary>Highest supply voltage, millivolts, up to which nothing changes.</summary>
    public int QuietSupplyHighMv => _cycle.Sensors.Supply.QuietHigh;

    /// <summary>Accepted edges of a cycle switch, saturating.</summary>
    public int PulsesOf(int index) => _cycle.Sensors.Switches[index].Pulses;

    /// <summary>Whether the edges of a cycle switch are ignored, cycle-switch-fault standing for it.</summary>
    public bool IsDistrusted(int index) => _cycle.Sensors.Switches[index].Distrusted;

    /// <summary>Takes new settings if they are accepted as a whole; if not, keeps the old ones and raises settings-invalid.</summary>
    /// <returns>Whether they were accepted; <see cref="SettingsCheck"/> says why not.</returns>
    public bool UseSettings(Settings settings)
    {
        _cycle.PassQuietTime();
        bool accepted = _check.Accepts(settings, _hasRule);
        if (accepted)
            _settings.CopyFrom(settings);
        _cycle.Conditions.SettingsAreValid = accepted;
        _cycle.Span.EndNow();
        return accepted;
    }

    /// <summary>One scan.</summary>
    /// <param name="nowMs">The millisecond clock; it may wrap, and scans may be up to 2^31 ms apart.</param>
    public void Scan(uint nowMs)
    {
        if (_eventsReported && _events.Count != 0)
            _events.Clear();
        _eventsReported = true;
        if (_cycle.Span.Extend(nowMs, _inputs) && _cycle.Sensors.AreQuiet)
            _cycle.FollowDrift();
        else
            _cycle.Run();
    }

    /// <summary>
    /// Power has come (back): the pump is off, cycle switches give a baseline after their ready delay, buttons must be
    /// released first, and an interrupted dose is pending.
    /// </summary>
    public void PowerUp()
    {
        _cycle.PowerUp();
        if (_restored && _cycle.Restarts.Add())
            NoteAtPowerUp(AlarmId.RestartUnexpected);
        _restored = false;
    }

    /// <summary>The main loop reports at power-up: the last run ended with an exception that it caught.</summary>
    public void NoteLogicFault() => NoteAtPowerUp(AlarmId.LogicFault);

    /// <summary>The main loop reports: a block of the non-volatile memory other than the settings lost its check value, or a save was refused.</summary>
    public void NoteStorageCorrupt() => NoteAtPowerUp(AlarmId.StorageCorrupt);

    /// <summary>Hides an alarm for a limited time, as a person asks: only what is shown of it changes.</summary>
    /// <param name="id">The alarm.</param>
    /// <param name="forMs">Milliseconds of powered time, 1 to the setting shelve-longest.</param>
    /// <returns>Whether it was done: not for another time, nor for an alarm out of service.</returns>
    public bool Shelve(AlarmId id, int forMs)
    {
        if (forMs < 1 || forMs > _settings[SettingField.ShelveLongestMs] || _alarms.StateOf(id) == AlarmState.OutOfService)
            return false;
        BeginBetweenScans();
        _alarms.Shelve(id, forMs);
        return true;
    }

    /// <summary>Shows a shelved alarm again; any other is left as it is.</summary>
    public void Unshelve(AlarmId id)
    {
        BeginBetweenScans();
        _alarms.Unshelve(id);
    }

    /// <summary>Takes an alarm out of service, or puts it into service again: only what is shown of it changes.</summary>
    public void SetOutOfService(AlarmId id, bool isOut)
    {
        BeginBetweenScans();
        if (isOut)
            _alarms.Unshelve(id);
        _alarms.SetOutOfService(id, isOut);
    }

    /// <summary>Writes the whole state.</summary>
    /// <param name="buffer">At least <see cref="StateLength"/> bytes.</param>
    /// <returns>Bytes written, or 0 where the buffer is too short or a rule hands through another length than at first.</returns>
    public int SaveState(byte[] buffer) => _door.Save(buffer, StateUse.Keep);

    /// <summary>Writes the state for one of several uses.</summary>
    /// <param name="buffer">At least <see cref="StateLength"/> bytes.</param>
    /// <param name="use">What it is for.</param>
    /// <returns>Bytes written, for <see cref="StateUse.Compare"/> as many as the state takes then; 0 as above.</returns>
    public int SaveState(byte[] buffer, StateUse use) => _door.Save(buffer, use);

    /// <summary>Reads a state that <see cref="SaveState(byte[])"/> wrote, and goes on exactly from there. After a power cut, call <see cref="PowerUp"/> next.</summary>
    /// <returns>False, with nothing changed, where the buffer holds no whole state of this core and rule.</returns>
    public bool RestoreState(byte[] buffer) => RestoreState(buffer, StateUse.Keep);

    /// <summary>Reads a state that was written for the same use. One for <see cref="StateUse.Step"/> goes on with the millisecond clock at 0.</summary>
    /// <returns>False, with nothing changed, as above, and for <see cref="StateUse.Compare"/>.</returns>
    public bool RestoreState(byte[] buffer, StateUse use)
    {
        bool restored = _door.Restore(buffer, use);
        _restored |= restored;
        return restored;
    }

    private void NoteAtPowerUp(AlarmId id)
    {
        BeginBetweenScans();
        _alarms.Touch(id);
    }

    /// <summary>Makes the next scan report what is done between two scans.</summary>
    private void BeginBetweenScans()
    {
        _cycle.PassQuietTime();
        if (_eventsReported && _events.Count != 0)
            _events.Clear();
        _eventsReported = false;
        _cycle.Span.EndNow();
    }
}
