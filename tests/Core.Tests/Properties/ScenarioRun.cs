using System;
using System.Collections.Generic;

namespace LubeController.Core.Tests;

/// <summary>How a random run is scanned.</summary>
internal enum Pace
{
    /// <summary>Every ten milliseconds.</summary>
    EveryTick,

    /// <summary>Every ten milliseconds, the core being kept from skipping by an input that matters to nothing.</summary>
    EveryTickForced,

    /// <summary>Only where an input changes or the core's deadline, in time or shaft pulses, is reached.</summary>
    Skipping,
}

/// <summary>
/// Plays a scenario against a core and a machine of which the pistons answer the pump: a switch moves after so many ticks of
/// pumping. Where doses end by pressure the line answers, too: it rises while the pump is on, falls while the vent valve is
/// open, by steps that the strokes say, and its switch has a hysteresis. Everything the core shows is written down with its time since the start.
/// </summary>
internal sealed class ScenarioRun
{
    private const int TickMs = 10;
    private const int RevolutionTicks = 23;

    private readonly Scenario _scenario;
    private readonly Pace _pace;
    private readonly uint _startMs;
    private readonly Settings _settings;
    private readonly int[] _untilStroke;
    private readonly bool[] _blocked = new bool[Inputs.MaxCycleSwitches];
    private int _tick;
    private int _shaftIntervalMs;
    private int _sinceShaftMs;
    private int _shaftPulses;
    private bool _nudged;
    private bool _ventSticks;
    private bool _leaks;
    private bool _pumpStands;
    private int _untilRevolution = RevolutionTicks;

    public ScenarioRun(Scenario scenario, Pace pace, uint startMs = 1_000)
    {
        _scenario = scenario;
        _pace = pace;
        _startMs = startMs;
        _settings = scenario.MakeSettings();
        _untilStroke = (int[])scenario.StrokeTicks.Clone();
        Inputs = new Inputs();
        Outputs = new Outputs();
        Core = NewCore();
    }

    public Inputs Inputs { get; }

    public Outputs Outputs { get; private set; }

    public Controller Core { get; private set; }

    public bool ByPressure => _settings.DoseMode == DoseMode.Pressure;

    public bool VentValveNormallyOpen => _settings.Is(SettingField.VentValveNormallyOpen);

    /// <summary>Time since the start of the run.</summary>
    public int NowMs => _tick * TickMs;

    public int this[int field] => _settings[field];

    /// <summary>Events and changes of outputs with their times, one a line.</summary>
    public List<string> Log { get; } = [];

    /// <summary>The saved state at the end of every step.</summary>
    public List<byte[]> States { get; } = [];

    /// <summary>Scans made.</summary>
    public int Scans { get; private set; }

    /// <summary>Called after every scan.</summary>
    public Action<ScenarioRun> OnScan { get; set; } = _ => { };

    /// <summary>Called before each step, with its index.</summary>
    public Action<ScenarioRun, int> BeforeStep { get; set; } = (_, _) => { };

    public Controller NewCore() => new(Inputs, Outputs, _settings, NewRule());

    public ScenarioRun Play()
    {
        Scan();
        for (int index = 0; index < _scenario.Steps.Count; index++)
        {
            BeforeStep(this, index);
            Step step = _scenario.Steps[index];
            Do(step);
            Scan();
            Pass(step.Ticks);
            States.Add(Save());
        }

        // Both ways of scanning end with a whole scan of equal inputs, so that the inputs kept are equal too.
        Inputs.TemperatureDeciC = -100;
        _nudged = false;
        Scan();
        States.Add(Save());
        return this;
    }

    /// <summary>Goes on with a new core that was given the state of the present one.</summary>
    public void SwapCore()
    {
        byte[] state = Save();
        Outputs = new Outputs();
        Core = NewCore();
        if (!Core.RestoreState(state))
            throw new InvalidOperationException("the core refused its own state");
        Scan();
    }

    private byte[] Save()
    {
        var state = new byte[Core.StateLength];
        if (Core.SaveState(state) != state.Length)
            throw new InvalidOperationException("the state has another length than it says");
        return state;
    }

    private ScenarioRule? NewRule() => _settings.RestMode == RestMode.Rule ? new ScenarioRule() : null;

    private void Pass(int ticks)
    {
        int end = _tick + ticks;
        while (_tick < end)
        {
            int skip = _pace == Pace.Skipping ? Math.Min(end - _tick, QuietTicks()) : 1;
            bool moved = false;
            for (int one = 0; one < skip && !moved; one++)
                moved = PassTick();
            if (_pace == Pace.EveryTickForced)
                Nudge(_tick < end);
            Scan();
        }
    }

    /// <returns>Whether an input changed or the shaft pulses reached the core's deadline.</returns>
    private bool PassTick()
    {
        _tick++;
        bool moved = false;
        for (int index = 0; index < _untilStroke.Length; index++)
        {
            if (!Outputs.Pump || _blocked[index] || --_untilStroke[index] > 0)
                continue;
            _untilStroke[index] = _scenario.StrokeTicks[index];
            Inputs.SetCycleSwitch(index, !Inputs.CycleSwitch(index));
            moved = true;
        }

        Inputs.PumpRevolutions = 0;
        if (Outputs.Pump && !_pumpStands && _settings.Is(SettingField.PumpRevolutionsFitted) && --_untilRevolution == 0)
        {
            _untilRevolution = RevolutionTicks;
            Inputs.PumpRevolutions = 1;
            moved = true;
        }

        if (ByPressure)
            moved |= PassLine();
        _sinceShaftMs += TickMs;
        if (_shaftIntervalMs > 0)
        {
            _shaftPulses += _sinceShaftMs / _shaftIntervalMs;
            _sinceShaftMs %= _shaftIntervalMs;
        }

        return moved || _shaftPulses >= Core.NextDeadlineShaftPulses;
    }

    /// <returns>Whether the pressure left the core's quiet band, or its switch moved.</returns>
    private bool PassLine()
    {
        bool open = Outputs.VentValve != VentValveNormallyOpen;
        int rate = 40 * _scenario.StrokeTicks[3];
        int pressure = Inputs.PressureMbar;
        if (Outputs.Pump && !_leaks)
            pressure = Math.Min(8_000, pressure + rate);
        if (!Outputs.Pump && open && !_ventSticks)
            pressure = Math.Max(0, pressure - rate);
        Inputs.PressureMbar = pressure;
        bool before = Inputs.PressureSwitch;
        if (pressure >= 6_000)
            Inputs.PressureSwitch = !_settings.Is(SettingField.PressureSwitchInverted);
        else if (pressure <= 3_000)
            Inputs.PressureSwitch = _settings.Is(SettingField.PressureSwitchInverted);
        return before != Inputs.PressureSwitch
            || (_settings.Is(SettingField.PressureTransmitterFitted) && (pressure < Core.QuietPressureLowMbar || pressure > Core.QuietPressureHighMbar));
    }

    private int QuietTicks() => Core.NextDeadlineMs > int.MaxValue - TickMs ? int.MaxValue : (Core.NextDeadlineMs + TickMs - 1) / TickMs;

    private void Nudge(bool again)
    {
        if (_nudged)
            Inputs.TemperatureDeciC--;
        _nudged = again && !_nudged;
        if (_nudged)
            Inputs.TemperatureDeciC++;
    }

    private void Do(Step step)
    {
        switch (step.Deed)
        {
            case Deed.Wait: break;
            case Deed.ToggleSwitch: Toggle(step.Argument % Inputs.MaxCycleSwitches); break;
            case Deed.Start: Inputs.SetDown(Button.Start, !Inputs.IsDown(Button.Start)); break;
            case Deed.Acknowledge: Inputs.SetDown(Button.Acknowledge, !Inputs.IsDown(Button.Acknowledge)); break;
            case Deed.Reset: Inputs.SetDown(Button.Reset, !Inputs.IsDown(Button.Reset)); break;
            case Deed.DoseNow: Inputs.SetDown(Button.DoseNow, !Inputs.IsDown(Button.DoseNow)); break;
            case Deed.Prime: Inputs.SetDown(Button.Prime, !Inputs.IsDown(Button.Prime)); break;
            case Deed.Stop: Inputs.Stop = !Inputs.Stop; break;
            case Deed.Running: Inputs.MachineRunning = !Inputs.MachineRunning; break;
            case Deed.LevelLow: Inputs.LevelLow = !Inputs.LevelLow; break;
            case Deed.LevelEmpty: Inputs.LevelEmpty = !Inputs.LevelEmpty; break;
            case Deed.VentValveSticks: _ventSticks = !_ventSticks; break;
            case Deed.LineLeaks: _leaks = !_leaks; break;
            case Deed.PressureSwitch: Inputs.PressureSwitch = !Inputs.PressureSwitch; break;
            case Deed.Pressure: Inputs.PressureMbar = step.Argument * 1_000; break;
            case Deed.Temperature: Inputs.TemperatureDeciC = (step.Argument * 100) - 150; break;
            case Deed.ShaftInterval: _shaftIntervalMs = step.Argument * 17; break;
            case Deed.OutputTest: Inputs.SetDown(Button.OutputTest, !Inputs.IsDown(Button.OutputTest)); break;
            case Deed.Overload: Inputs.PumpOverload = !Inputs.PumpOverload; break;
            case Deed.Supply: Inputs.SupplyMv = 16_000 + (step.Argument * 800); break;
            case Deed.PumpStands: _pumpStands = !_pumpStands; break;
            case Deed.ScanLate: Inputs.ScanLate = !Inputs.ScanLate; break;
            case Deed.Shelve: Core.Shelve((AlarmId)(step.Argument * 7 % AlarmTable.Count), 1_000 + (step.Argument * 137)); break;
            case Deed.OutOfService: ToggleService((AlarmId)(step.Argument * 5 % AlarmTable.Count)); break;
            case Deed.Block: _blocked[step.Argument % _blocked.Length] ^= true; break;
            default: CutPower(); break;
        }
    }

    private void Toggle(int index) => Inputs.SetCycleSwitch(index, !Inputs.CycleSwitch(index));

    private void ToggleService(AlarmId id) =>
        Core.SetOutOfService(id, Core.Alarms.StateOf(id) != AlarmState.OutOfService);

    private void CutPower()
    {
        byte[] state = Save();
        Core = NewCore();
        Core.RestoreState(state);
        Core.PowerUp();
        if (_tick % 3 == 0)
            Core.NoteStorageCorrupt();
        if (_tick % 7 == 0)
            Core.NoteLogicFault();
    }

    private void Scan()
    {
        Inputs.ShaftPulses = _shaftPulses;
        Inputs.ShaftPulseAgeMs = _sinceShaftMs;
        _shaftPulses = 0;
        Core.Scan(unchecked(_startMs + ((uint)_tick * TickMs)));
        Inputs.PumpRevolutions = 0;
        Scans++;
        for (int index = 0; index < Core.Events.Count; index++)
            Log.Add($"{_tick} {EventText.Of(Core.Events, index)}");
        string shown = $"pump {Outputs.Pump} vent {Outputs.VentValve} healthy {Outputs.HealthyRelay} warning {Outputs.Warning} lamp {Outputs.Lamp} {Core.Phase} {Core.Alarms.Standing:x} first {Core.Alarms.FirstUp}";
        if (shown != _shown)
            Log.Add($"{_tick} {shown}");
        _shown = shown;
        OnScan(this);
    }

    private string _shown = "";
}
