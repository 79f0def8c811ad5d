using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>Records what the core and its board show: phase, alarms, counters, inputs as sampled, outputs, and the events of each scan.</summary>
internal sealed class CoreRecorder
{
    private static readonly ControllerInput[] Recorded = [.. ControllerInputs.All.Where(input => input.IsRecorded)];

    private readonly Trace _trace;
    private readonly IReadOnlyList<string> _switchNames;
    private readonly Signal _phase;
    private readonly Signal[] _standing = new Signal[AlarmTable.Count];
    private readonly Signal[] _active = new Signal[AlarmTable.Count];
    private readonly Signal[] _unseen = new Signal[AlarmTable.Count];
    private readonly Signal[] _states = new Signal[AlarmTable.Count];
    private readonly Signal _firstUp;
    private readonly Signal[] _pulses;
    private readonly Signal[] _switches;
    private readonly Signal _doses;
    private readonly Signal _doseEdges;
    private readonly Signal _pressureCycles;
    private readonly Signal _refused;
    private readonly Signal _opened;
    private readonly Signal[] _inputs;
    private readonly Signal[] _outputs;
    private bool _whole = true;
    private int _levels;

    public CoreRecorder(Trace trace, IReadOnlyList<string> switchNames)
    {
        _trace = trace;
        _switchNames = switchNames;
        _phase = trace.Define("phase", SignalKind.Step, "1", CoreWords.Phases);
        _outputs =
        [
            OnOff("output.pump"), OnOff("output.vent-valve"), OnOff("output.healthy-relay"), OnOff("output.warning"), OnOff("output.lamp"),
        ];
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            string name = CoreWords.Alarms[index];
            _standing[index] = OnOff("alarm." + name);
            _active[index] = OnOff("active." + name);
            _unseen[index] = OnOff("unseen." + name);
            _states[index] = trace.Define("state." + name, SignalKind.Step, "1", CoreWords.AlarmStates);
        }

        _firstUp = trace.Define("first-up", SignalKind.Step, "1", [.. CoreWords.Alarms.Prepend("none")]);

        _doses = Count("doses");
        _doseEdges = Count("dose-edges");
        _pressureCycles = Count("pressure-cycles");
        _refused = Count("presses-refused");
        _opened = Count("opened-counts");
        _pulses = new Signal[switchNames.Count];
        _switches = new Signal[switchNames.Count];
        for (int index = 0; index < switchNames.Count; index++)
        {
            _pulses[index] = Count("pulses-" + switchNames[index]);
            _switches[index] = OnOff("switch." + switchNames[index]);
        }

        _inputs = [.. Recorded.Select(input => OnOff("input." + input.Name))];
    }

    /// <summary>A core has just been made: its first scan is recorded whole.</summary>
    public void Begin() => _whole = true;

    public void RecordInputs(long timeUs, Inputs inputs)
    {
        if (!_whole && inputs.Levels == _levels)
            return;
        _levels = inputs.Levels;
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Record(timeUs, inputs.CycleSwitch(index) ? 1 : 0);
        for (int index = 0; index < _inputs.Length; index++)
            _inputs[index].Record(timeUs, Recorded[index].Get(inputs));
    }

    public void RecordOutputs(long timeUs, Outputs outputs)
    {
        RecordOutput(timeUs, _outputs[0], outputs.Pump);
        RecordOutput(timeUs, _outputs[1], outputs.VentValve);
        RecordOutput(timeUs, _outputs[2], outputs.HealthyRelay);
        RecordOutput(timeUs, _outputs[3], outputs.Warning);
        _outputs[4].Record(timeUs, outputs.Lamp ? 1 : 0);
    }

    public void RecordCore(long timeUs, Controller core)
    {
        // Whatever is recorded here changes with an event only; most scans have none.
        ScanEvents events = core.Events;
        if (!_whole && events.Count == 0)
            return;
        _whole = false;
        for (int index = 0; index < events.Count; index++)
            NoteEvent(timeUs, events, index);
        _phase.Record(timeUs, (int)core.Phase);
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            var id = (AlarmId)index;
            _standing[index].Record(timeUs, core.Alarms.Stands(id) ? 1 : 0);
            _active[index].Record(timeUs, core.Alarms.IsActive(id) ? 1 : 0);
            _unseen[index].Record(timeUs, core.Alarms.IsUnseen(id) ? 1 : 0);
            _states[index].Record(timeUs, (int)core.Alarms.StateOf(id));
        }

        _firstUp.Record(timeUs, core.Alarms.FirstUp + 1);

        _doses.Record(timeUs, core.DosesCompleted);
        _doseEdges.Record(timeUs, core.DoseEdges);
        _pressureCycles.Record(timeUs, core.PressureCycles);
        _refused.Record(timeUs, core.PressesRefused);
        _opened.Record(timeUs, core.OpenedCounts);
        for (int index = 0; index < _pulses.Length; index++)
            _pulses[index].Record(timeUs, core.PulsesOf(index));
    }

    private Signal OnOff(string name) => _trace.Define(name, SignalKind.OnOff, "1");

    private Signal Count(string name) => _trace.Define("counter." + name, SignalKind.Step, "1");

    private void RecordOutput(long timeUs, Signal signal, bool on)
    {
        int before = signal.Count;
        signal.Record(timeUs, on ? 1 : 0);
        if (signal.Count != before && before > 0)
            _trace.Note(timeUs, "output", signal.Name["output.".Length..] + (on ? " on" : " off"));
    }

    private void NoteEvent(long timeUs, ScanEvents events, int index)
    {
        int subject = events.Subject(index);
        int detail = events.Detail(index);
        switch (events.Kind(index))
        {
            case ScanEvent.PhaseChanged:
                _trace.Note(timeUs, "phase", $"{CoreWords.Phases[subject]} -> {CoreWords.Phases[detail]}");
                break;
            case ScanEvent.AlarmRaised:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " raised");
                break;
            case ScanEvent.AlarmEnded:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " condition ended");
                break;
            case ScanEvent.LatchCleared:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " reset");
                break;
            case ScanEvent.AlarmSuppressed:
                _trace.Note(timeUs, "alarm", $"{CoreWords.Alarms[subject]} suppressed by design, as it follows from {string.Join(" and ", CoreWords.AlarmsOf(detail))}");
                break;
            case ScanEvent.SuppressionEnded:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " no longer suppressed");
                break;
            case ScanEvent.AlarmShelved:
                _trace.Note(timeUs, "alarm", string.Create(CultureInfo.InvariantCulture, $"{CoreWords.Alarms[subject]} shelved for {detail / 1000.0} s"));
                break;
            case ScanEvent.ShelvingEnded:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " no longer shelved");
                break;
            case ScanEvent.TakenOutOfService:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " taken out of service");
                break;
            case ScanEvent.PutIntoService:
                _trace.Note(timeUs, "alarm", CoreWords.Alarms[subject] + " put into service");
                break;
            case ScanEvent.SensorsDisagree:
                _trace.Note(timeUs, "sensor", string.Create(CultureInfo.InvariantCulture, $"{CoreWords.SensorPairs[subject]} disagree{(detail > 0 ? $": {detail} % of the volume that the pulses stand for was pumped" : "")}"));
                break;
            case ScanEvent.PressObeyed:
                _trace.Note(timeUs, "press", CoreWords.Buttons[subject] + " obeyed");
                break;
            case ScanEvent.PressRefused:
                _trace.Note(timeUs, "press", CoreWords.Buttons[subject] + " refused");
                break;
            case ScanEvent.DoseCompleted:
                _trace.Note(timeUs, "dose", "completed");
                break;
            case ScanEvent.DoseStepTaken:
                _trace.Note(timeUs, "dose", "step " + CoreWords.DoseSteps[subject]);
                break;
            default:
                _trace.Note(timeUs, "pulse", NamePulse(events.Kind(index), SwitchName(subject), detail));
                break;
        }
    }

    private string SwitchName(int index) => index < _switchNames.Count ? _switchNames[index] : $"switch {index + 1}";

    private static string NamePulse(ScanEvent kind, string name, int detail) => kind switch
    {
        ScanEvent.PulseCounted => $"{name} counted, {detail} in this dose",
        ScanEvent.PulseOpened => $"{name} opens the counting",
        ScanEvent.PulseCredited => $"{name} credited, {detail} so far",
        ScanEvent.PulseTooFast => $"{name} too fast, ignored",
        ScanEvent.PulseDistrusted => $"{name} distrusted, ignored",
        ScanEvent.SwitchFound => $"{name} found wrong by {CoreWords.SwitchProofs[detail]}",
        _ => $"{name} seen",
    };
}
