using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>No scan allocates, whatever the phase, the alarm or the button.</summary>
public sealed class AllocationTests
{
    private readonly Inputs _inputs = new();
    private readonly Outputs _outputs = new();
    private byte[] _state = [];
    private Controller _core;
    private readonly Settings _wrong = TestSettings.Make(settings => settings[SettingField.DoseEdges] = 0);
    private readonly Settings _right = TestSettings.Make(Wide);
    private readonly Settings _singleLine = TestSettings.Make(SingleLine);
    private readonly HashSet<Phase> _phases = new(16);
    private readonly bool[] _events = new bool[Enum.GetValues<ScanEvent>().Length];
    private readonly bool[] _obeyed = new bool[Enum.GetValues<Button>().Length];
    private int _alarms;
    private uint _nowMs;
    private long _allocated;

    public AllocationTests() => _core = Made(new ScenarioRule());

    [Fact]
    public void Runs_that_visit_every_phase_alarm_and_button_allocate_nothing()
    {
        // Once to let the runtime compile and allocate what it wants, once to measure.
        Visit();
        _allocated = 0;
        _phases.Clear();
        _alarms = 0;
        Array.Clear(_events);
        Array.Clear(_obeyed);
        Visit();
        Assert.Equal(0, _allocated);
        Assert.Equal(Enum.GetValues<Phase>(), _phases.Order());
        Assert.Equal((1 << AlarmTable.Count) - 1, _alarms);
        Assert.All(_obeyed, Assert.True);
        Assert.All(Enum.GetValues<ScanEvent>(), kind => Assert.True(_events[(int)kind], kind.ToString()));
    }

    [Fact]
    public void The_measure_sees_an_allocation()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        GC.KeepAlive(new byte[1]);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() > before);
    }

    [Fact]
    public void The_runs_that_gate_the_scan_count_every_byte_that_a_rule_allocates()
    {
        var rule = new AllocatingRule();
        _core = Made(rule);
        Visit();
        _allocated = 0;
        rule.Count = 0;
        Visit();
        Assert.True(rule.Count > 100, $"the rule advanced {rule.Count} times");
        Assert.Equal(rule.Count * SizeOfAnObject(), _allocated);
    }

    private static long SizeOfAnObject()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        GC.KeepAlive(new object());
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private Controller Made(IRestRule rule)
    {
        var core = new Controller(_inputs, _outputs, _right, rule);
        _state = new byte[core.StateLength];
        return core;
    }

    private static void Wide(Settings settings)
    {
        settings[SettingField.SwitchCount] = 2;
        settings[SettingField.DoseEdges] = 4;
        settings[SettingField.RestMode] = (int)RestMode.Rule;
        settings[SettingField.RestFallbackMs] = 3_000;
        settings[SettingField.RuleLongestRestMs] = 5_000;
        settings[SettingField.OverdueMs] = 20_000;
        settings[SettingField.ShaftFitted] = 1;
        settings[SettingField.ShaftLostMs] = 5_000;
        settings[SettingField.RunDownMs] = 12_000;
        settings[SettingField.PressureSpanMbar] = 400_000;
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureMissingMs] = 2_000;
        settings[SettingField.DoseLimitMs] = 10_000;
        settings[SettingField.NewTryDelayMs] = 2_000;
        settings[SettingField.MinPulseIntervalMs] = 250;
        settings[SettingField.FirstPulseAllowanceMs] = 1_000;
        settings[SettingField.SupplyMeasured] = 1;
        settings[SettingField.OverloadFitted] = 1;
        settings[SettingField.ColdJudged] = 1;
        settings[SettingField.RestartsMost] = 5;
        settings[SettingField.OutputTestMs] = 2_000;
        settings.SetTimeout(0, 4_000);
        settings.SetTimeout(1, 60_000);
        settings.SetRetries(0, 1);
    }

    private static void SingleLine(Settings settings)
    {
        Wide(settings);
        TestSettings.ByPressure(settings);
        settings[SettingField.PressureCycles] = 2;
        settings[SettingField.DoseLimitMs] = 30_000;
    }

    private void Visit()
    {
        Run(500);
        Press(() => _inputs.SetDown(Button.Acknowledge, true));
        Press(() => _inputs.SetDown(Button.Start, true));
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Prime, true));
        Pressure(20_000);
        Run(12_000);
        Pulses(5);
        Hot();
        Press(() => _inputs.SetDown(Button.DoseNow, true));
        Run(7_000);
        Run(25_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.DoseNow, true));
        for (int pulse = 0; pulse < 8; pulse++)
            Pulse(1);
        Run(3_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Pressure(0);
        Run(30_000);
        Pressure(500_000);
        Run(1_000);
        Pressure(20_000);
        _inputs.LevelLow = true;
        _inputs.LevelEmpty = true;
        Run(2_000);
        _inputs.LevelLow = false;
        _inputs.LevelEmpty = false;
        Run(2_000);
        _core.UseSettings(_wrong);
        Run(100);
        _core.UseSettings(_right);
        Run(100);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.DoseNow, true));
        LongDose();
        Run(200);
        Chatter();
        Pulse(0);
        Run(5_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Prime, true));
        Stop();
        Run(7_000);
        Pulse(0);
        Pulse(0);
        ByPressure();
        Platform();
        for (int cut = 0; cut < 2; cut++)
        {
            Measured(() => _core.SaveState(_state));
            Measured(() => _core.RestoreState(_state));
            Measured(_core.PowerUp);
        }

        Measured(_core.NoteLogicFault);
        Measured(_core.NoteStorageCorrupt);
        Run(500);
        Contradict();
        Run(61_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Start, true));
        Press(() => _inputs.SetDown(Button.Reset, true));
    }

    /// <summary>The shaft turns on although the machine is said to stand; the transmitter shows what none can.</summary>
    private void Contradict()
    {
        _inputs.MachineRunning = false;
        _inputs.ShaftPulses = 1;
        _inputs.PressureMbar = -50_000;
        Run(15_000);
        _inputs.MachineRunning = true;
        _inputs.ShaftPulses = 0;
        _inputs.PressureMbar = 0;
        Run(100);
    }

    /// <summary>Supply, temperature, overload, a late scan, the output test, and what a person hides.</summary>
    private void Platform()
    {
        _inputs.SupplyMv = 10_000;
        _inputs.TemperatureDeciC = -300;
        _inputs.PumpOverload = true;
        _inputs.ScanLate = true;
        Run(1_000);
        Measured(() => _core.Shelve(AlarmId.SupplyLow, 1_000));
        Measured(() => _core.SetOutOfService(AlarmId.LubricantCold, true));
        Run(1_500);
        Measured(() => _core.SetOutOfService(AlarmId.LubricantCold, false));
        _inputs.SupplyMv = 24_000;
        _inputs.TemperatureDeciC = 200;
        _inputs.PumpOverload = false;
        _inputs.ScanLate = false;
        Run(70_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Start, true));
        Press(() => _inputs.SetDown(Button.DoseNow, true));
        Pulses(8);
        _inputs.Stop = true;
        Run(100);
        _inputs.Stop = false;
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.OutputTest, true));
        Run(3_000);
        Press(() => _inputs.SetDown(Button.Start, true));
        Run(3_000);
        Press(() => _inputs.SetDown(Button.Reset, true));
    }

    /// <summary>A dose that is too long: each pulse only opens the counting, since a reset came before it.</summary>
    private void LongDose()
    {
        Pressure(20_000);
        for (int part = 0; part < 45; part++)
        {
            _inputs.SetCycleSwitch(0, part % 10 == 0);
            Run(300);
            if (part % 10 == 8 && _core.Phase == Phase.Dose)
                Press(() => _inputs.SetDown(Button.Reset, true));
        }
    }

    /// <summary>A dose of two pressure cycles, then one whose line is not vented.</summary>
    private void ByPressure()
    {
        _core.UseSettings(_singleLine);
        Press(() => _inputs.SetDown(Button.Reset, true));
        Press(() => _inputs.SetDown(Button.Start, true));
        Pressure(0);
        Run(7_000);
        Press(() => _inputs.SetDown(Button.DoseNow, true));
        for (int cycle = 0; cycle < 4; cycle++)
        {
            Pressure(20_000);
            Run(3_000);
            Pressure(0);
            Run(7_000);
        }

        Pressure(20_000);
        Run(30_000);
        Pressure(0);
        _core.UseSettings(_right);
        Press(() => _inputs.SetDown(Button.Reset, true));
    }

    private void Chatter()
    {
        for (int change = 0; change < 30; change++)
        {
            _inputs.SetCycleSwitch(0, change % 2 == 0);
            Run(10);
        }
    }

    /// <summary>The rule answers a negative time; one that throws would allocate its exception.</summary>
    private void Hot()
    {
        _inputs.TemperatureDeciC = 850;
        Run(100);
        _inputs.TemperatureDeciC = 200;
    }

    private void Stop()
    {
        _inputs.Stop = true;
        Run(100);
        _inputs.Stop = false;
        Press(() => _inputs.SetDown(Button.Start, true));
        _inputs.Stop = true;
        Run(100);
        _inputs.Stop = false;
    }

    private void Pulses(int count)
    {
        for (int pulse = 0; pulse < count; pulse++)
        {
            Pulse(0);
            Pulse(1);
        }
    }

    private void Pulse(int index)
    {
        _inputs.SetCycleSwitch(index, true);
        Run(100);
        _inputs.SetCycleSwitch(index, false);
        Run(100);
    }

    private void Pressure(int pressureMbar) => _inputs.PressureMbar = pressureMbar;

    private void Press(Action down)
    {
        down();
        Run(60);
        for (int button = 0; button <= (int)Button.OutputTest; button++)
            _inputs.SetDown((Button)button, false);
        Run(60);
    }

    private void Measured(Action what)
    {
        what();
        long before = GC.GetAllocatedBytesForCurrentThread();
        what();
        _allocated += GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private void Run(int durationMs)
    {
        for (int passed = 0; passed < durationMs; passed += 10)
        {
            _nowMs += 10;
            long before = GC.GetAllocatedBytesForCurrentThread();
            _core.Scan(_nowMs);
            _allocated += GC.GetAllocatedBytesForCurrentThread() - before;
            _phases.Add(_core.Phase);
            _alarms |= _core.Alarms.Standing;
            for (int index = 0; index < _core.Events.Count; index++)
            {
                _events[(int)_core.Events.Kind(index)] = true;
                if (_core.Events.Kind(index) == ScanEvent.PressObeyed)
                    _obeyed[_core.Events.Subject(index)] = true;
            }
        }
    }
}
