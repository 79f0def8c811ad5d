using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>
/// A virtual bench for the core alone: it sets inputs, scans every ten milliseconds and writes down, in order, what the
/// core saw and did. Power is cut by restoring the saved state into a new core.
/// </summary>
internal sealed class CoreBench
{
    public const int TickMs = 10;

    private readonly IRestRule? _rule;
    private readonly List<string> _log = [];

    public CoreBench(Action<Settings>? change = null, IRestRule? rule = null, uint startMs = 5_000)
    {
        _rule = rule;
        Settings = TestSettings.Make(change);
        NowMs = startMs;
        Inputs = new Inputs();
        Outputs = new Outputs();
        Core = new Controller(Inputs, Outputs, Settings, rule);
    }

    public Settings Settings { get; }

    public Inputs Inputs { get; }

    public Outputs Outputs { get; }

    public Controller Core { get; private set; }

    public uint NowMs { get; private set; }

    /// <summary>Shaft pulses the bench gives in every scan.</summary>
    public int ShaftPulsesPerTick { get; set; }

    public Phase Phase => Core.Phase;

    /// <summary>Everything written down since <see cref="ClearLog"/>.</summary>
    public IReadOnlyList<string> Log => _log;

    /// <summary>The phase changes alone.</summary>
    public IEnumerable<string> Phases => _log.Where(line => line.Contains('>', StringComparison.Ordinal));

    /// <summary>The alarms alone: + raised, - ended, ~ latch cleared.</summary>
    public IEnumerable<string> AlarmLines => _log.Where(line => line[0] is '+' or '-' or '~');

    /// <summary>Steps of doses by pressure.</summary>
    public IEnumerable<string> Steps => _log.Where(line => line.StartsWith("step ", StringComparison.Ordinal));

    /// <summary>What became of pulses.</summary>
    public IEnumerable<string> PulseLines => _log.Where(line => line.StartsWith("pulse ", StringComparison.Ordinal));

    public void ClearLog() => _log.Clear();

    public bool Stands(AlarmId id) => Core.Alarms.Stands(id);

    /// <summary>Names of all alarms that stand, in the order of the table.</summary>
    public string Standing() => string.Join(' ', Enumerable.Range(0, AlarmTable.Count)
        .Select(index => (AlarmId)index).Where(Stands).Select(id => AlarmTable.Spec(id).Name));

    /// <summary>Revolutions the pump makes in every scan in which it is on.</summary>
    public int RevolutionsPerTick { get; set; }

    public CoreBench Scan()
    {
        Inputs.PumpRevolutions = Outputs.Pump ? RevolutionsPerTick : 0;
        Inputs.ShaftPulses = ShaftPulsesPerTick;
        Inputs.ShaftPulseAgeMs = 0;
        Core.Scan(NowMs);
        Assert.Equal(0, Core.Events.Lost);
        for (int index = 0; index < Core.Events.Count; index++)
            _log.Add(EventText.Of(Core.Events, index));
        return this;
    }

    /// <summary>Lets time pass, in whole ticks.</summary>
    public CoreBench Run(int durationMs)
    {
        for (int passed = 0; passed < durationMs; passed += TickMs)
        {
            NowMs = unchecked(NowMs + TickMs);
            Scan();
        }

        return this;
    }

    /// <summary>Lets time pass until something holds, and tells how long it took.</summary>
    public int RunUntil(Func<bool> holds, int mostMs)
    {
        for (int passed = 0; passed <= mostMs; passed += TickMs)
        {
            if (holds())
                return passed;
            Run(TickMs);
        }

        Assert.Fail($"not within {mostMs} ms; phase {Phase}, standing: {Standing()}");
        return -1;
    }

    public int RunUntil(Phase phase, int mostMs) => RunUntil(() => Phase == phase, mostMs);

    public CoreBench Switch(bool on, int index = 0)
    {
        Inputs.SetCycleSwitch(index, on);
        return this;
    }

    /// <summary>One on-edge and one off-edge of a cycle switch, both accepted; slow enough to be no chatter.</summary>
    public CoreBench Pulse(int index = 0) => Switch(true, index).Run(150).Switch(false, index).Run(150);

    public CoreBench Pulses(int count, int index = 0)
    {
        for (int pulse = 0; pulse < count; pulse++)
            Pulse(index);
        return this;
    }

    /// <summary>The transmitter reads so much from the next scan on.</summary>
    public CoreBench Pressure(int pressureMbar)
    {
        Inputs.PressureMbar = pressureMbar;
        return this;
    }

    /// <summary>Pressure comes, is held and falls; the line then stands vented for its time. A pressure cycle if the pump starts it.</summary>
    public CoreBench PressureCycle() => Pressure(TestSettings.ReachedMbar).Run(TickMs + Settings[SettingField.HoldMs])
        .Pressure(0).Run(TickMs + Settings[SettingField.VentMs]);

    public CoreBench PressureCycles(int count)
    {
        for (int cycle = 0; cycle < count; cycle++)
            PressureCycle();
        return this;
    }

    public CoreBench Set(Button button, bool down)
    {
        Inputs.SetDown(button, down);

        return this;
    }

    /// <summary>Presses and releases.</summary>
    public CoreBench Press(Button button) => Set(button, true).Run(50).Set(button, false).Run(50);

    /// <summary>Presses and keeps holding.</summary>
    public CoreBench Hold(Button button) => Set(button, true).Run(50);

    public CoreBench Empty(bool on)
    {
        Inputs.LevelEmpty = on;
        return Run(TestSettings.LevelMs + 100);
    }

    /// <summary>Gives a cycle switch as many level changes as prove chatter with the preset.</summary>
    public CoreBench Chatter(int index = 0)
    {
        for (int change = 0; change < 20; change++)
            Switch(!Inputs.CycleSwitch(index), index).Run(TickMs);
        return this;
    }

    /// <summary>From a new core through its first dose to a full rest with known position.</summary>
    public CoreBench ToRest()
    {
        RunUntil(Phase.Dose, Settings[SettingField.RestartDelayMs] + 1000);
        if (Settings.DoseMode == DoseMode.Pressure)
            PressureCycles(Settings[SettingField.PressureCycles]);
        else if (Settings.DoseMode == DoseMode.RunTime)
            RunUntil(Phase.Rest, Settings[SettingField.DoseRunMs] + 1000);
        else
            Pulses(Settings[SettingField.DoseEdges] + 1);
        Assert.Equal(Phase.Rest, Phase);
        Assert.False(Core.DosePending);
        ClearLog();
        return this;
    }

    /// <summary>A new core in its first dose, the counting not yet opened.</summary>
    public CoreBench ToRunningDose()
    {
        RunUntil(Phase.Dose, Settings[SettingField.RestartDelayMs] + 1000);
        ClearLog();
        return this;
    }

    /// <summary>A full rest, then the pump on by hand.</summary>
    public CoreBench ToDose()
    {
        ToRest().Run(TestSettings.RunOnMs + 1000).Press(Button.DoseNow);
        Assert.Equal(Phase.Dose, Phase);
        ClearLog();
        return this;
    }

    /// <summary>A dose that ran into its pulse timeout with no retries.</summary>
    public CoreBench ToStalled()
    {
        ToDose().RunUntil(Phase.Failed, 10 * 60_000);
        Assert.True(Stands(AlarmId.DividerStalled));
        ClearLog();
        return this;
    }

    /// <summary>Cuts power, and what the main loop tells of it afterwards.</summary>
    public CoreBench CutPower(Action<Controller>? note)
    {
        byte[] state = Save();
        Core = new Controller(Inputs, Outputs, Settings, _rule);
        Assert.True(Core.RestoreState(state));
        Core.PowerUp();
        note?.Invoke(Core);
        return Scan();
    }

    /// <summary>Cuts power: the state saved now is all that is left.</summary>
    public CoreBench CutPower() => CutPower(null);

    public byte[] Save()
    {
        var state = new byte[Core.StateLength];
        Assert.Equal(state.Length, Core.SaveState(state));
        return state;
    }
}
