using System;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>The simplest board on which the deployed main loop lives a life: pulses, pressure and shaft come by the clock while the pump runs.</summary>
internal sealed class SweepBoard : IBoard
{
    private const int PressMs = 200;
    private const int PressureMs = 2_000;
    private const int LongestTurnMs = 5_000;

    private readonly PowerCutSetup _setup;
    private readonly PowerCutStep[] _steps;
    private readonly int _halfPulseMs;
    private int _next;
    private bool _stop;
    private bool _low;
    private bool _empty;
    private bool _blocked;
    private bool _throws;
    private bool _powerGoes;
    private int _pressed = -1;
    private long _pressedAtMs;
    private bool _pump;
    private int _pumpMs;
    private long _readAtMs;
    private int _storing;
    private (bool Asked, AlarmId Alarm) _shelving;

    public SweepBoard(PowerCutSetup setup)
    {
        _setup = setup;
        _steps = [.. setup.Steps];
        _halfPulseMs = Math.Max(setup.Settings.OfSwitch(0, SettingField.SwitchTimeoutMs) / 8, Math.Max(setup.Settings.OfSwitch(0, SettingField.SwitchDebounceMs) + 10, setup.Settings[SettingField.MinPulseIntervalMs]));
    }

    public long TimeMs { get; private set; }

    /// <summary>Hears that the pump is switched on.</summary>
    public Action PumpOn { get; set; } = () => { };

    public uint NowMs => unchecked((uint)TimeMs);

    public ResetCause ResetCause { get; private set; }

    public int LateMs => 0;

    public bool HasWallTime => false;

    public uint WallTimeS => 0;

    public bool Over => TimeMs >= _setup.DurationMs;

    /// <summary>Seconds to add to the rest of the settings that shall be stored now; 0 for none.</summary>
    public int TakeStoreRequest()
    {
        int seconds = _storing;
        _storing = 0;
        return seconds;
    }

    /// <summary>Power is back, or the board restarts.</summary>
    public void Begin()
    {
        TimeMs += 1_000;
        _pump = false;
        _pumpMs = 0;
        _readAtMs = TimeMs;
    }

    public void PowerComesBack() => ResetCause = ResetCause.PowerOn;

    public void ReadInputs(Inputs inputs)
    {
        if (_throws)
        {
            _throws = false;
            throw new InvalidOperationException("the fault that the schedule asks for");
        }

        int passed = (int)(TimeMs - _readAtMs);
        _readAtMs = TimeMs;
        _pumpMs = _pump ? _pumpMs + passed : _pumpMs;
        bool level = ((_pumpMs / _halfPulseMs) & 1) != 0;
        for (int index = 0; index < Inputs.MaxCycleSwitches; index++)
            inputs.SetCycleSwitch(index, level != _setup.Settings.Is(SettingField.OfSwitch(index, SettingField.SwitchInverted)));
        bool reached = _pump && _pumpMs >= PressureMs;
        inputs.PressureSwitch = _setup.Settings.PressureSwitchUse == PressureSwitchUse.Reached && reached != _setup.Settings.Is(SettingField.PressureSwitchInverted);
        inputs.PressureMbar = reached ? (_setup.Settings[SettingField.PressureReachedMbar] + _setup.Settings[SettingField.PressureLimitMbar]) / 2 : 0;
        inputs.LevelLow = _low != _setup.Settings.Is(SettingField.LevelLowInverted);
        inputs.LevelEmpty = _empty != _setup.Settings.Is(SettingField.LevelEmptyInverted);
        inputs.PumpOverload = _setup.Settings.Is(SettingField.OverloadInverted);
        inputs.MachineRunning = true;
        inputs.Stop = _stop;
        inputs.ShaftPulses = _setup.Settings.Is(SettingField.ShaftFitted) ? passed / 100 : 0;
        inputs.PumpRevolutions = _pump ? passed / 50 : 0;
        foreach (Button button in Enum.GetValues<Button>())
            inputs.SetDown(button, _pressed == (int)button);
    }

    public void WriteOutputs(Outputs outputs)
    {
        if (outputs.Pump && !_pump)
            PumpOn();
        _pump = outputs.Pump;
    }

    public void KickWatchdog()
    {
    }

    public void Restart() => ResetCause = ResetCause.LoopFault;

    public bool WaitForNextScan(Controller core, int mostMs)
    {
        if (_shelving.Asked)
        {
            core.Shelve(_shelving.Alarm, Math.Min(60_000, _setup.Settings[SettingField.ShelveLongestMs]));
            _shelving = default;
        }

        long due = TimeMs + Math.Clamp(Math.Min(core.NextDeadlineMs, mostMs), 1, LongestTurnMs);
        if (_pump && !_blocked)
            due = Math.Min(due, TimeMs + _halfPulseMs - (_pumpMs % _halfPulseMs));
        if (_pressed >= 0)
            due = Math.Min(due, Math.Max(_pressedAtMs + PressMs, TimeMs + 1));
        if (_next < _steps.Length)
            due = Math.Min(due, Math.Max(_steps[_next].AtMs, TimeMs + 1));
        if (_blocked && _pump)
            _readAtMs += Math.Min(due, _setup.DurationMs) - TimeMs;
        TimeMs = due;
        if (_pressed >= 0 && TimeMs >= _pressedAtMs + PressMs)
            _pressed = -1;
        while (_next < _steps.Length && _steps[_next].AtMs <= TimeMs)
            Obey(_steps[_next++]);
        bool goesOn = !_powerGoes && _storing == 0 && !Over;
        _powerGoes = false;
        return goesOn;
    }

    /// <summary>Whether the turn ended for something other than power.</summary>
    public bool Stores => _storing != 0;

    private void Obey(PowerCutStep step)
    {
        switch (step.Deed)
        {
            case PowerCutDeed.Press:
                _pressed = step.Number;
                _pressedAtMs = TimeMs;
                break;
            case PowerCutDeed.Stop: _stop = step.Number != 0; break;
            case PowerCutDeed.LevelLow: _low = step.Number != 0; break;
            case PowerCutDeed.LevelEmpty: _empty = step.Number != 0; break;
            case PowerCutDeed.Blocked: _blocked = step.Number != 0; break;
            case PowerCutDeed.Shelve: _shelving = (true, (AlarmId)step.Number); break;
            case PowerCutDeed.Store: _storing = step.Number; break;
            case PowerCutDeed.Fault: _throws = true; break;
            default: _powerGoes = true; break;
        }
    }
}
