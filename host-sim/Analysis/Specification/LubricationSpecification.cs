using System;
using Stateless.Reflection;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The executable specification of the controller's phases and alarm lifecycle, written from the control rules and from
/// ISA-18.2 / IEC 62682, not from the control core. It is to be obviously right rather than fast, and runs in lockstep with
/// the core on discrete scans. Its phases are the machine of <see cref="PhaseMachine"/>, its alarms each a machine of
/// <see cref="LifecycleMachine"/>; what is counted and timed stands plainly beside them, one concept to a class, over one
/// <see cref="SpecState"/>. Left out: a user's own rules, and sensors that disagree by pressure or volume.
/// </summary>
public sealed class LubricationSpecification
{
    private readonly SpecSettings _settings;
    private readonly SpecMisreadings _misread;
    private readonly SpecState _state;
    private readonly SpecScan _scan = new();
    private readonly StandingAlarms _standing;
    private readonly AlarmLifecycles _lifecycles;
    private readonly LinePressure _pressure;
    private readonly Shaft _shaft;
    private readonly AlarmBook _alarms;
    private readonly Annunciation _annunciation;
    private readonly Display _display;
    private readonly Phases _phases;
    private readonly Pump _pump;
    private readonly SwitchFaults _faults;
    private readonly Analogs _analogs;
    private readonly PressureDose _byPressure;
    private readonly Dosing _dose;
    private readonly CycleSwitches _switches;
    private readonly RestClock _rest;
    private readonly Restarts _restarts;
    private readonly Presses _presses;

    /// <summary>Makes a controller that finds no valid state at its first power-up.</summary>
    /// <exception cref="ArgumentException">A setting makes no sense; the message names it and what is accepted.</exception>
    public LubricationSpecification(SpecSettings settings)
        : this(settings, SpecMisreadings.None, SpecReadings.Own)
    {
    }

    /// <summary>Makes one that misreads the rules, or reads them otherwise.</summary>
    internal LubricationSpecification(SpecSettings settings, SpecMisreadings misread, SpecReadings readings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        SpecSettingsCheck.Check(settings);
        _settings = settings;
        _misread = misread;
        _state = new SpecState(settings);
        _standing = new StandingAlarms(_state, _scan, misread.Alarms);
        _lifecycles = new AlarmLifecycles(settings, _state, misread);
        _pressure = new LinePressure(settings, _state, _scan);
        _shaft = new Shaft(settings, _state, _scan);
        var conditions = new AlarmConditions(settings, _state, _scan, _pressure, _shaft);
        _alarms = new AlarmBook(settings, _state, _scan, conditions, _lifecycles, misread.Alarms);
        _annunciation = new Annunciation(_state, _scan, _lifecycles, _standing, misread.Alarms);
        _display = new Display(settings, _state, _scan, _standing);
        _phases = new Phases(settings, _state, _scan, _standing, readings, misread);
        _pump = new Pump(settings, _state, _scan, _alarms, _standing);
        _faults = new SwitchFaults(settings, _state, _scan, _alarms);
        _analogs = new Analogs(settings, _state, _scan, _alarms);
        var timers = new SwitchTimers(settings, _state, _alarms, _phases);
        _byPressure = new PressureDose(settings, _state, _alarms, _pressure, timers);
        _dose = new Dosing(settings, _state, _scan, _alarms, _standing, timers, _byPressure, _phases);
        _switches = new CycleSwitches(settings, _state, _scan, _alarms, _pump, _faults, _dose);
        _rest = new RestClock(settings, _state, _scan, _shaft);
        _restarts = new Restarts(settings, _state);
        _presses = new Presses(_state, _scan, _alarms, _phases, _pump, _faults, timers, _dose);
        _phases.OnTransitioned(new PhaseEffects(_state, _dose, _byPressure).Follow);
        PowerUp();
    }

    /// <summary>What the last scan showed; everything off before the first scan after a power-up.</summary>
    public SpecOutputs Outputs { get; private set; }

    /// <summary>The state, for those who look but do not change.</summary>
    internal SpecState State => _state;

    /// <summary>The alarms that were raised in the last scan, as bits of <see cref="AlarmId"/>.</summary>
    internal ulong Raised => _scan.Raised;

    /// <summary>Whether the mark of the first alarm was given in the last scan.</summary>
    internal bool MarkedFirstUp => _scan.MarkedFirstUp;

    /// <summary>What the phase machine says of itself.</summary>
    internal StateMachineInfo PhaseInfo => _phases.Info;

    /// <summary>
    /// One scan: time passes under everything as it stood at the end of the scan before, the inputs are accepted, then it is
    /// decided, in this order: a low supply, pulses, conditions of the other alarms, end and limits of the dose, presses, timed
    /// transitions, what alarms do to the phase, and stop, the strongest, last.
    /// </summary>
    /// <param name="elapsedMs">Time since the scan before or since power-up, ms, 0 upward.</param>
    /// <param name="inputs">What this scan sees.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative time or count.</exception>
    public SpecOutputs Step(int elapsedMs, SpecInputs inputs)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(elapsedMs);
        ArgumentOutOfRangeException.ThrowIfNegative(inputs.ShaftPulses, nameof(inputs));
        bool waited = _standing.AnyWaits;
        _scan.Begin(inputs);
        Pass(elapsedMs);
        AcceptInputs();
        _dose.ObeyHolding();
        _dose.EndWhereDue();
        _annunciation.MarkFirstUp(waited);
        _annunciation.EndShelvingInTime();
        _lifecycles.SuppressConsequences();
        _presses.Obey();
        _phases.EndInTime(_rest);
        _phases.ObeyAlarms();
        if (_state.Levels.Stop.Level)
            _phases.Fire(PhaseEvent.StopOn);
        _lifecycles.SuppressConsequences();
        _annunciation.ForgetFirstUp();
        _pump.Drive();
        _display.EndFlashing();
        Outputs = _display.Show();
        return Outputs;
    }

    /// <summary>One alarm as it stands now.</summary>
    public AlarmView Alarm(AlarmId alarm)
    {
        AlarmState one = _state.Alarm(alarm);
        return new AlarmView(one.Lifecycle, one.Active, one.Latched, one.ShelvedMs, _state.FirstUp == alarm);
    }

    /// <summary>Silences an alarm for a limited time; one that is shelved already is so for the new time. Nothing happens if it is out of service.</summary>
    /// <param name="alarm">Which.</param>
    /// <param name="durationMs">How long, ms of powered time, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The duration is below 1.</exception>
    public void Shelve(AlarmId alarm, int durationMs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(durationMs, 1);
        _annunciation.Shelve(alarm, durationMs);
        Outputs = _display.Show();
    }

    /// <summary>Ends shelving before its time.</summary>
    public void EndShelving(AlarmId alarm) => Announce(alarm, LifecycleEvent.ShelvingOver);

    /// <summary>Takes an alarm out of service.</summary>
    public void TakeOutOfService(AlarmId alarm) => Announce(alarm, LifecycleEvent.TakeOutOfService);

    /// <summary>Returns an alarm to service.</summary>
    public void ReturnToService(AlarmId alarm) => Announce(alarm, LifecycleEvent.ReturnToService);

    /// <summary>
    /// Cuts the power and restores it, with the state of the last scan saved. Everything is off until the next scan, whose
    /// elapsed time counts from power-up. Inputs are seen afresh; durations, counts and alarms go on. The
    /// power-up is counted, and alarmed where it came too soon or once too often.
    /// </summary>
    public void PowerCut()
    {
        PowerUp();
        if (_restarts.CountPowerUp())
            NoteAtPowerUp(AlarmId.RestartUnexpected);
    }

    /// <summary>The main loop reports, at power-up, what ended the last run: <c>logic-fault</c> or <c>storage-corrupt</c>.</summary>
    /// <param name="alarm">Which of them.</param>
    public void NoteAtPowerUp(AlarmId alarm)
    {
        bool waited = _standing.AnyWaits;
        _scan.Began = _scan.Raised = 0;
        _alarms.NoteInstant(alarm);
        _lifecycles.SuppressConsequences();
        _annunciation.MarkFirstUp(waited);
    }

    /// <summary>The row of an alarm in the table that is obeyed.</summary>
    internal AlarmRule Rule(AlarmId alarm) => _misread.Alarms[(int)alarm];

    /// <summary>The state in one line that a person can read.</summary>
    public override string ToString() => SpecStateText.Describe(_state);

    private void Announce(AlarmId alarm, LifecycleEvent happening)
    {
        _annunciation.Announce(alarm, happening);
        Outputs = _display.Show();
    }

    private void Pass(int elapsedMs)
    {
        foreach (AlarmState alarm in _state.Alarms)
            alarm.Pass(elapsedMs);
        _state.Levels.Pass(elapsedMs);
        _dose.Pass(elapsedMs);
        _byPressure.Pass(elapsedMs);
        _phases.Pass(elapsedMs);
        _rest.Pass(elapsedMs);
        _shaft.Pass(elapsedMs);
        _pump.Pass(elapsedMs);
        _switches.Pass(elapsedMs);
        _display.Pass(elapsedMs);
        _restarts.Pass(elapsedMs);
    }

    private void AcceptInputs()
    {
        _rest.CountShaftPulses();
        bool ran = _shaft.MachineRuns;
        _scan.Fresh = _state.Levels.Accept(_scan.Inputs, _settings);
        _shaft.Count(ran);
        _pump.CountRevolutions();
        _analogs.Compare();
        _switches.Accept();
        _pressure.Accept();
        _faults.DistrustWrongSwitches();
        _alarms.UpdateAll();
    }

    private void PowerUp()
    {
        _phases.Fire(PhaseEvent.PowerUp);
        _state.Dose.Try = false;
        _state.PhaseMs = 0;
        _state.Pump.On = false;
        _state.Levels = default;
        _state.ReadyMs = _settings.ReadyDelayMs;
        foreach (SwitchState one in _state.Switches)
            one.ForgetLevel();
        _shaft.PowerUp();
        Outputs = _display.ShowPowerUp();
    }
}
