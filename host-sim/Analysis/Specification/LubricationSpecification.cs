using System;
using System.Collections.Generic;
using System.Linq;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The executable specification of the controller's phases and alarm lifecycle, written from the control rules and from
/// ISA-18.2 / IEC 62682, not from the control core. It is to be obviously right rather than fast, and runs in lockstep with
/// the core on discrete scans. Its phases are the machine of <see cref="PhaseTable"/>, its alarms each a machine of
/// <see cref="LifecycleTable"/>; what is counted and timed stands plainly beside them. Left out: a user's own rules,
/// and sensors that disagree by pressure or volume.
/// </summary>
public sealed partial class LubricationSpecification
{
    private readonly SpecSettings _settings;
    private readonly SpecTables _tables;
    private readonly SpecReadings _readings;
    private readonly AlarmDelays[] _delays;
    private readonly StateMachine<Phase, PhaseEvent> _phases;
    private readonly StateMachine<Lifecycle, LifecycleEvent>[] _lifecycles;
    private SpecState _state;
    private SpecInputs _inputs;

    // What this scan has found; nothing of it outlives the scan.
    private ulong _began;
    private ulong _raised;
    private ulong _beganBeforeTry;
    private bool _shaftStood;
    private bool _completed;
    private Buttons _fresh;
    private Buttons _refused;

    /// <summary>Makes a controller that finds no valid state at its first power-up.</summary>
    /// <exception cref="ArgumentException">A setting makes no sense; the message names it and what is accepted.</exception>
    public LubricationSpecification(SpecSettings settings)
        : this(settings, SpecTables.Own, SpecReadings.Own)
    {
    }

    /// <summary>Makes one that obeys other tables, or reads the rules otherwise.</summary>
    internal LubricationSpecification(SpecSettings settings, SpecTables tables, SpecReadings readings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        SpecSettingsCheck.Check(settings);
        _settings = settings;
        _tables = tables;
        _readings = readings;
        _delays = [.. tables.Alarms.Select(rule => settings.Delays.GetValueOrDefault(rule.Id))];
        _state = NoValidState();
        _phases = PhaseMachine();
        _lifecycles = [.. tables.Alarms.Select(rule => LifecycleMachine(rule.Id))];
        PowerUp();
    }

    /// <summary>What the last scan showed; everything off before the first scan after a power-up.</summary>
    public SpecOutputs Outputs { get; private set; }

    /// <summary>
    /// One scan: time passes under everything as it stood at the end of the scan before, the inputs are taken, then it is
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
        _inputs = inputs;
        _began = _raised = _beganBeforeTry = 0;
        _completed = false;
        _fresh = _refused = Buttons.None;

        bool waited = AnyWaits;

        PassTime(elapsedMs);
        TakeLevels();
        JudgeSupply();
        TakePulses();
        TakePressure();
        DistrustWrongSwitches();
        JudgeConditions();
        ObeyHolding();
        JudgeDose();
        MarkFirstUp(waited);
        EndShelvingInTime();
        SuppressConsequences();
        ActOnPresses();
        ActOnTime();
        ActOnAlarms();
        if (_state.Levels.Stop.Level)
            Fire(PhaseEvent.StopOn);
        SuppressConsequences();
        ForgetFirstUp();
        DrivePump();
        if (!AnyWaits)
            _state.Clocks.LampMs = 0;
        Outputs = Show();
        return Outputs;
    }

    private void DrivePump()
    {
        bool doses = _state.Phase == Phase.Dose && (!ByPressure || StepPumps);
        _state.Pump = (doses || _state.Phase == Phase.Prime) && !Stands(AlarmAction.Interlock) && !Stands(AlarmAction.Holding);
        if (!_state.Pump)
            return;

        // The vent valve is closed: nothing is vented any more.
        _state.Clocks.PumpOffMs = 0;
        _state.Line.VentingMs = 0;
        _state.Line.VentedMs = 0;
    }

    /// <summary>One alarm as it stands now.</summary>
    public AlarmView Alarm(AlarmId alarm)
    {
        AlarmState one = _state.Alarms[(int)alarm];
        return new AlarmView(one.Lifecycle, one.Active, one.Latched, one.ShelvedMs, _state.FirstUp == alarm);
    }

    /// <summary>The alarms that were raised in the last scan, as bits of <see cref="AlarmId"/>.</summary>
    internal ulong Raised => _raised;

    /// <summary>Whether the mark of the first alarm was given in the last scan.</summary>
    internal bool MarkedFirstUp { get; private set; }

    /// <summary>The row of an alarm in the table that is obeyed.</summary>
    internal AlarmRule Rule(AlarmId alarm) => RuleOf(alarm);

    /// <summary>The state, which later scans do not change.</summary>
    public SpecState Snapshot() => _state.Copy();

    /// <summary>Goes back to a state, to the last of its values; this is no power cut.</summary>
    /// <exception cref="ArgumentException">The state belongs to settings with another number of switches.</exception>
    public void Restore(SpecState snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        if (snapshot.Switches.Length != _settings.Switches.Count)
            throw new ArgumentException($"The snapshot has {snapshot.Switches.Length} switches; the settings have {_settings.Switches.Count}.", nameof(snapshot));
        _state = snapshot.Copy();
        _refused = Buttons.None;
        _completed = false;
        Outputs = Show();
    }

    /// <summary>The state in one line that a person can read.</summary>
    public override string ToString() => _state.ToString();
}
