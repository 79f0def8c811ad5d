namespace LubeController.Core;

/// <summary>
/// The control core: one scan cycle as in IEC 61131-3 (copy inputs, <see cref="Scan"/>, copy outputs). It keeps
/// durations and counts, never points in time, so that the wrap of a 32-bit millisecond clock cannot matter and states
/// can be compared. No scan allocates.
/// </summary>
/// <remarks>
/// A scan first lets the elapsed time pass under everything as it stood, then takes the new inputs, then decides. Hence
/// many short scans under unchanged inputs come to exactly the same as one long one, and the core itself, as well as a
/// simulator, may skip quiet time up to <see cref="NextDeadlineMs"/>.
/// </remarks>
public sealed partial class Controller
{
    private const int StateMark = 0x4C430104;

    /// <summary>Mark, length and check value.</summary>
    private const int HeaderLength = 12;

    private const int LongestState = 4096;
    private const int NotMeasured = -1;
    private const int LampHalfPeriodMs = 250;
    private const int NoTest = -1;

    private readonly Inputs _inputs;
    private readonly Outputs _outputs;
    private readonly Settings _settings = new Settings();
    private readonly SettingsCheck _check = new SettingsCheck();
    private readonly bool _hasRule;
    private readonly Inputs _held = new Inputs();
    private readonly StateStream _stream = new StateStream();
    private readonly CycleSwitch[] _switches = new CycleSwitch[Inputs.MaxCycleSwitches];
    private readonly DebouncedInput _low = new DebouncedInput();
    private readonly DebouncedInput _empty = new DebouncedInput();
    private readonly PressButton _startButton = new PressButton();
    private readonly PressButton _acknowledgeButton = new PressButton();
    private readonly PressButton _resetButton = new PressButton();
    private readonly PressButton _doseNowButton = new PressButton();
    private readonly PressButton _primeButton = new PressButton();
    private readonly PressButton _testButton = new PressButton();
    private readonly PressureWatch _pressure;
    private readonly ShaftWatch _shaft;
    private readonly RestClock _rest;
    private readonly DoseProgress _dose;
    private readonly PressureDose _line;
    private readonly PumpWatch _pump;
    private readonly SensorComparison _compare;
    private readonly RestartCount _restarts;
    private readonly LimitWatch _supply = new LimitWatch();
    private readonly LimitWatch _warmth = new LimitWatch();

    private bool _restored;
    private bool _eventsTold;
    private bool _pumpHeld;
    private bool _shaftWasContradicted;
    private bool _settingsValid;
    private Phase _primeFrom;
    private bool _trying;
    private bool _afterFailure;
    private bool _doseFails;
    private int _readyMs;
    private int _phaseMs;
    private int _pumpOffMs = Saturating.Never;
    private int _overdueMs;
    private int _lampMs;

    private bool _clockKnown;
    private uint _lastMs;
    private int _quietMs;
    private int _quietPulses;
    private int _quietPulseAgeMs;
    private int _deadlineMs;
    private int _deadlinePulses;

    /// <summary>Makes a core over images that the board owns. Settings that are refused raise settings-invalid.</summary>
    /// <param name="inputs">The input image, written anew before every scan.</param>
    /// <param name="outputs">The output image, written by every scan.</param>
    /// <param name="settings">The settings; their values are copied.</param>
    /// <param name="rule">A user's rest rule, or null.</param>
    public Controller(Inputs inputs, Outputs outputs, Settings settings, IRestRule? rule)
    {
        _inputs = inputs;
        _outputs = outputs;
        _hasRule = rule != null;
        Events = new ScanEvents();
        Alarms = new AlarmList(_settings, Events);
        _pressure = new PressureWatch(_settings);
        _shaft = new ShaftWatch(_settings);
        _rest = new RestClock(_settings, rule);
        _dose = new DoseProgress(_settings);
        _line = new PressureDose(_settings, _pressure, Events);
        _pump = new PumpWatch(_settings);
        _compare = new SensorComparison(_settings);
        _restarts = new RestartCount(_settings);
        for (int index = 0; index < _switches.Length; index++)
            _switches[index] = new CycleSwitch(_settings, index);
        UseSettings(settings);
        RenewSwitches();
        _rest.Begin();
        _dose.MakeDue();
        StateLength = NotMeasured;
        StateLength = SaveState(new byte[LongestState]);
        PowerUp();
    }

    /// <summary>What the core is doing.</summary>
    public Phase Phase { get; private set; }

    /// <summary>The alarms.</summary>
    public AlarmList Alarms { get; }

    /// <summary>What the latest scan saw and did.</summary>
    public ScanEvents Events { get; }

    /// <summary>Doses completed, saturating.</summary>
    public int DosesCompleted { get; private set; }

    /// <summary>Presses refused, saturating.</summary>
    public int PressesRefused { get; private set; }

    /// <summary>Edges counted in the present or pending dose.</summary>
    public int DoseEdges => _dose.Edges;

    /// <summary>What a dose by pressure is doing; <see cref="DoseStep.Vent"/> also while one cut short in it is pending.</summary>
    public DoseStep DoseStep => _line.Step;

    /// <summary>Pressure cycles counted in the present or pending dose by pressure.</summary>
    public int PressureCycles => _line.Cycles;

    /// <summary>Whether a dose was begun and is not completed.</summary>
    public bool DosePending => _dose.Pending;

    /// <summary>Whether the divider's position is known; if not, the next pulse only opens the counting.</summary>
    public bool PositionKnown => _dose.PositionKnown;

    /// <summary>Doses that began without known position and so gave up to one cycle more than set, saturating.</summary>
    public int OpenedCounts => _dose.OpenedCounts;

    /// <summary>Bytes that <see cref="SaveState(byte[])"/> writes; 0 where a rule's state is longer than can be kept, so that none is ever saved.</summary>
    public int StateLength { get; }

    /// <summary>The refusals of the settings handed over last.</summary>
    public SettingsCheck SettingsCheck => _check;

    /// <summary>
    /// Milliseconds, 1 or more, in which no scan would change anything if the inputs stay as they are; the scan at or
    /// after its end must be made. <see cref="Saturating.Never"/> if nothing is due.
    /// </summary>
    public int NextDeadlineMs => _deadlineMs == Saturating.Never ? Saturating.Never : Saturating.Remaining(_deadlineMs, _quietMs);

    /// <summary>Shaft pulses after which a scan must be made, 1 or more; <see cref="Saturating.Never"/> if none matters. Fewer may be handed over in one delta.</summary>
    public int NextDeadlineShaftPulses => _deadlinePulses == Saturating.Never ? Saturating.Never : Saturating.Remaining(_deadlinePulses, _quietPulses);

    /// <summary>Lowest transmitter reading, millibar, down to which nothing changes.</summary>
    public int QuietPressureLowMbar => _pressure.QuietLowMbar;

    /// <summary>Highest transmitter reading, millibar, up to which nothing changes.</summary>
    public int QuietPressureHighMbar => _pressure.QuietHighMbar;

    /// <summary>Lowest supply voltage, millivolts, down to which nothing changes.</summary>
    public int QuietSupplyLowMv => _supply.QuietLow;

    /// <summary>Highest supply voltage, millivolts, up to which nothing changes.</summary>
    public int QuietSupplyHighMv => _supply.QuietHigh;

    /// <summary>Accepted edges of a cycle switch, saturating.</summary>
    public int PulsesOf(int index) => _switches[index].Pulses;

    /// <summary>Whether the edges of a cycle switch are ignored, cycle-switch-fault standing for it.</summary>
    public bool IsDistrusted(int index) => _switches[index].Distrusted;

    /// <summary>Takes new settings if they are accepted as a whole; if not, keeps the old ones and raises settings-invalid.</summary>
    /// <returns>Whether they were accepted; <see cref="SettingsCheck"/> tells why not.</returns>
    public bool UseSettings(Settings settings)
    {
        PassQuietTime();
        _settingsValid = _check.Accepts(settings, _hasRule);
        if (_settingsValid)
            _settings.CopyFrom(settings);
        _deadlineMs = 0;
        return _settingsValid;
    }

    /// <summary>One scan.</summary>
    /// <param name="nowMs">The millisecond clock; it may wrap, and scans may be up to 2^31 ms apart.</param>
    public void Scan(uint nowMs)
    {
        uint passed = _clockKnown ? unchecked(nowMs - _lastMs) : 0;
        int elapsedMs = passed > int.MaxValue ? int.MaxValue : (int)passed;
        _lastMs = nowMs;
        _clockKnown = true;
        if (_eventsTold && Events.Count != 0)
            Events.Clear();
        _eventsTold = true;

        int pulses = _inputs.ShaftPulses;
        _quietMs = Saturating.Add(_quietMs, elapsedMs);
        _quietPulses = Saturating.Add(_quietPulses, pulses);
        _quietPulseAgeMs = pulses > 0 ? _inputs.ShaftPulseAgeMs : Saturating.Add(_quietPulseAgeMs, elapsedMs);
        if (_quietMs < _deadlineMs && _quietPulses < _deadlinePulses && InputsQuiet())
        {
            _held.PressureMbar = _inputs.PressureMbar;
            _held.SupplyMv = _inputs.SupplyMv;
            return;
        }

        PassTime();
        _doseFails = false;
        TakeInputs();
        Decide();
        Drive();
        _held.CopyFrom(_inputs);
        PlanNext();
    }

    /// <summary>
    /// Power has come (back): the pump is off, cycle switches give a baseline after their ready delay, buttons must be
    /// released first, and an interrupted dose is pending.
    /// </summary>
    public void PowerUp()
    {
        _clockKnown = false;
        _deadlineMs = 0;
        _readyMs = _settings[SettingField.ReadyDelayMs];
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Forget();
        _low.Forget();
        _empty.Forget();
        _startButton.Forget();
        _acknowledgeButton.Forget();
        _resetButton.Forget();
        _doseNowButton.Forget();
        _primeButton.Forget();
        _testButton.Forget();
        _pressure.Forget();
        _pump.Forget();
        _shaft.PowerUp();
        _outputs.MakeSafe();
        PowerUpPhase();
        if (_restored && _restarts.Add())
            NoteAtPowerUp(AlarmId.RestartUnexpected);
        _restored = false;
    }

    private bool InputsQuiet() =>
        _inputs.Levels == _held.Levels
        && _inputs.PumpRevolutions == 0
        && _supply.IsQuiet(_inputs.SupplyMv)
        && _inputs.TemperatureDeciC == _held.TemperatureDeciC
        && _inputs.PressureMbar >= _pressure.QuietLowMbar
        && _inputs.PressureMbar <= _pressure.QuietHighMbar;

    /// <summary>Lets the quiet time pass without a decision: none was due.</summary>
    private void PassQuietTime()
    {
        if (_deadlineMs != Saturating.Never)
            _deadlineMs = _quietMs >= _deadlineMs ? 0 : _deadlineMs - _quietMs;
        if (_deadlinePulses != Saturating.Never)
            _deadlinePulses = _quietPulses >= _deadlinePulses ? 0 : _deadlinePulses - _quietPulses;
        PassTime();
    }

    private void PassTime()
    {
        int elapsedMs = _quietMs;
        int pulses = _quietPulses;
        _quietMs = 0;
        _quietPulses = 0;
        if (elapsedMs == 0 && pulses == 0)
            return;
        bool doseRuns = Phase == Phase.Dose && _outputs.Pump;
        bool wasRunning = _held.MachineRunning;
        if (!StandsStill)
            _overdueMs = Saturating.Add(_overdueMs, elapsedMs);
        if (RestCounts)
            _rest.Advance(elapsedMs, pulses, _held);
        if (doseRuns)
            _dose.Advance(elapsedMs);
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
            _switches[index].Advance(elapsedMs, doseRuns);
        _line.Advance(elapsedMs, _outputs.Pump, Phase == Phase.Dose && !_pumpHeld);
        AdvanceInputs(elapsedMs, doseRuns);
        _shaft.Advance(elapsedMs, pulses, _quietPulseAgeMs, wasRunning);
        Alarms.Advance(elapsedMs);
        _phaseMs = Saturating.Add(_phaseMs, elapsedMs);
        _restarts.Advance(elapsedMs);
        if (!Alarms.IsActive(AlarmId.SupplyLow))
            _readyMs = _readyMs > elapsedMs ? _readyMs - elapsedMs : 0;
        _pumpOffMs = _outputs.Pump ? 0 : Saturating.Add(_pumpOffMs, elapsedMs);
        if (Alarms.AnyUnseen)
            _lampMs = (_lampMs + (elapsedMs % (2 * LampHalfPeriodMs))) % (2 * LampHalfPeriodMs);
    }

    private void AdvanceInputs(int elapsedMs, bool doseRuns)
    {
        _low.Advance(elapsedMs);
        _empty.Advance(elapsedMs);
        _startButton.Advance(elapsedMs);
        _acknowledgeButton.Advance(elapsedMs);
        _resetButton.Advance(elapsedMs);
        _doseNowButton.Advance(elapsedMs);
        _primeButton.Advance(elapsedMs);
        _testButton.Advance(elapsedMs);
        _pressure.Advance(elapsedMs, doseRuns);
        _pump.Advance(elapsedMs, _outputs.Pump);
        _compare.Advance(elapsedMs, _outputs.Pump);
    }

    private void Drive()
    {
        bool doses = Phase == Phase.Dose && (!_line.Chosen || _line.PumpRuns);
        _outputs.Pump = (doses || Phase == Phase.Prime) && !Alarms.InterlockStands && !Alarms.HoldingStands;
        if (_outputs.Pump)
        {
            _pumpOffMs = 0;
            _line.TakePumpOn();
        }

        // Closed exactly while the pump runs: it never pumps into the open valve, and no line stands under pressure.
        _outputs.VentValve = _line.Chosen && _outputs.Pump == _settings.Is(SettingField.VentValveNormallyOpen);
        _outputs.HealthyRelay = !Alarms.FailureStands;
        _outputs.Warning = Alarms.OtherStands || Phase == Phase.Stopped || Phase == Phase.Prime;
        if (!Alarms.AnyUnseen)
            _lampMs = 0;
        _outputs.Lamp = Alarms.AnyUnseen ? _lampMs < LampHalfPeriodMs : Alarms.AnyShown;
        if (Phase == Phase.OutputTest)
            DriveTest();
    }

    /// <summary>Relay dropped; warning; lamp; all three energised.</summary>
    private void DriveTest()
    {
        int part = TestPart;
        _outputs.HealthyRelay = part != 0;
        _outputs.Warning = part == 1 || part == 3;
        _outputs.Lamp = part == 2 || part == 3;
    }

    private void PlanNext()
    {
        bool doseRuns = Phase == Phase.Dose && _outputs.Pump;
        int deadline = Saturating.Min(PhaseDeadlineMs(), Alarms.DeadlineMs());
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
            deadline = Saturating.Min(deadline, _switches[index].DeadlineMs(_readyMs == 0, doseRuns));
        if (_readyMs > 0 && !Alarms.IsActive(AlarmId.SupplyLow))
            deadline = Saturating.Min(deadline, _readyMs);
        deadline = Saturating.Min(deadline, InputDeadlineMs());
        deadline = Saturating.Min(deadline, _pressure.DeadlineMs(doseRuns));
        deadline = Saturating.Min(deadline, _shaft.DeadlineMs(_held.MachineRunning));
        deadline = Saturating.Min(deadline, _pump.DeadlineMs(_outputs.Pump));
        if (!StandsStill && _overdueMs < _settings[SettingField.OverdueMs])
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.OverdueMs], _overdueMs));
        if (Alarms.AnyUnseen)
            deadline = Saturating.Min(deadline, LampHalfPeriodMs - (_lampMs % LampHalfPeriodMs));
        _deadlineMs = deadline;
        int pulses = _shaft.DeadlineShaftPulses(_held.MachineRunning);
        if (RestCounts && RestIsWatched)
            pulses = Saturating.Min(pulses, _rest.DeadlineShaftPulses());
        _deadlinePulses = pulses;
    }

    private int InputDeadlineMs()
    {
        int buttons = _settings[SettingField.ButtonDebounceMs];
        int levels = _settings[SettingField.LevelDebounceMs];
        int deadline = Saturating.Min(_low.DeadlineMs(levels), _empty.DeadlineMs(levels));
        deadline = Saturating.Min(deadline, _startButton.DeadlineMs(buttons));
        deadline = Saturating.Min(deadline, _acknowledgeButton.DeadlineMs(buttons));
        deadline = Saturating.Min(deadline, _resetButton.DeadlineMs(buttons));
        deadline = Saturating.Min(deadline, _doseNowButton.DeadlineMs(buttons));
        deadline = Saturating.Min(deadline, _primeButton.DeadlineMs(buttons));
        return Saturating.Min(deadline, _testButton.DeadlineMs(buttons));
    }
}
