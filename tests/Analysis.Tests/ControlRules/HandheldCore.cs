using LubeController.Analysis.Lockstep;
using LubeController.Core;
using Buttons = LubeController.Analysis.Specification.Buttons;

namespace LubeController.Analysis.Tests.ControlRules;

/// <summary>The deployed core, scanned every 10 ms with inputs held by hand.</summary>
internal sealed class HandheldCore
{
    internal const int ScanMs = 10;

    private readonly SettingsValues _settings;
    private DeployedCore _core;
    private uint _nowMs;

    /// <summary>Powers a core up that finds no valid state.</summary>
    /// <exception cref="System.ArgumentException">The core refuses the settings; the message names the one.</exception>
    internal HandheldCore(params (int Field, int Value)[] settings)
    {
        _settings = LockstepSettings.Neutral(LockstepSettings.ValuesOf(new Settings()))
            .With(SettingField.ButtonDebounceMs, 0)
            .With(SettingField.ReadyDelayMs, 0)
            .With(SettingField.OfSwitch(0, SettingField.SwitchDebounceMs), 0)
            .With(SettingField.OfSwitch(1, SettingField.SwitchDebounceMs), 0)
            .With(SettingField.RestartDelayMs, 1_000);
        foreach ((int field, int value) in settings)
            _settings = _settings.With(field, value);
        LockstepSettings.ToSpec(_settings);
        _core = new DeployedCore(_settings);
        Scan();
    }

    internal LockstepInputs Inputs { get; set; } = new();

    internal Observation Seen => _core.Observe();

    internal Phase Phase => (Phase)Seen.Phase;

    internal AlarmObservation Alarm(AlarmId alarm) => Seen.Alarms[(int)alarm];

    internal bool Stands(AlarmId alarm) => Alarm(alarm) is { Active: true } or { Latched: true };

    internal Observation Scan()
    {
        _nowMs += ScanMs;
        _core.Scan(Inputs, _nowMs);
        return Seen;
    }

    /// <summary>Scans until the time has passed.</summary>
    internal Observation Run(int durationMs)
    {
        for (int passed = 0; passed < durationMs; passed += ScanMs)
            Scan();
        return Seen;
    }

    /// <summary>Presses for one scan and releases.</summary>
    /// <returns>Whether the press was refused.</returns>
    internal bool IsRefused(Buttons button)
    {
        int before = Seen.PressesRefused;
        LockstepInputs held = Inputs;
        Inputs = held with { Pressed = button };
        Scan();
        bool refused = Seen.PressesRefused > before;
        Inputs = held;
        Scan();
        return refused;
    }

    internal void Press(Buttons button) => IsRefused(button);

    /// <summary>Stop goes on and off again.</summary>
    internal HandheldCore Stopped()
    {
        Inputs = Inputs with { Stop = true };
        Scan();
        Inputs = Inputs with { Stop = false };
        Scan();
        return this;
    }

    internal void Switches(int on) => Inputs = Inputs with { CycleSwitches = on };

    internal void Pressure(int millibar) => Inputs = Inputs with { PressureMbar = millibar };

    /// <summary>Cuts the power and restores it, the state of the last scan saved.</summary>
    internal void CutPower()
    {
        byte[] saved = _core.Save();
        _core = new DeployedCore(_settings);
        _core.Restore(saved);
        _core.PowerUp();
        _core.Scan(Inputs, _nowMs);
    }
}
