using System;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>How long what the monitors watch may last, milliseconds.</summary>
/// <remarks>
/// With cuts at least one save interval apart what is saved is at least half of what is lived, so a bound B in saved time is
/// at most 2 B and one interval in powered time. A cut that tears the save of an interval takes that interval along, so it must
/// be two intervals apart from the power-up. Each cut of a dose also costs the restart delay again.
/// </remarks>
internal sealed class MonitorBounds(CoreSetup setup, bool cuts)
{
    private readonly Settings _settings = setup.Settings;
    private readonly int _switches = setup.Settings[SettingField.SwitchCount];

    /// <summary>Without a completed dose, until <c>lubrication-overdue</c> is raised.</summary>
    public int OverdueMs => _settings[SettingField.OverdueMs] + _settings[SettingField.DelayOn(AlarmId.LubricationOverdue)] + (2 * setup.StepMs);

    /// <summary>From one completed dose to the next.</summary>
    public int RoundMs
    {
        get
        {
            int pauses = 0;
            for (int index = 0; index < _switches; index++)
                pauses += _settings.OfSwitch(index, SettingField.SwitchRetries) * _settings[SettingField.RetryPauseMs];
            // A dose by pressure stands still to recharge, and once in each pressure cycle to vent.
            int vents = _settings.DoseMode == DoseMode.Pressure ? (_settings[SettingField.PressureCycles] + 1) * _settings[SettingField.VentLimitMs] : 0;
            int restart = _settings[SettingField.RestartDelayMs];
            int bound = LongestRestMs + vents + restart + _settings[SettingField.DoseLimitMs] + (pauses * (_settings[SettingField.DoseEdges] + 1)) + (3 * setup.StepMs);
            int interval = _settings[SettingField.SaveIntervalMs];
            return cuts ? (2 * (int)((long)bound * interval / Math.Max(1, interval - restart))) + interval : bound;
        }
    }

    private int LongestRestMs
    {
        get
        {
            int shaft = _settings.RestShaftPulses * (_settings[SettingField.ShaftLostMs] + setup.StepMs);
            return _settings.RestMode switch
            {
                RestMode.Shaft => Math.Max(shaft, _settings[SettingField.RestFallbackMs] + _settings[SettingField.ShaftLostMs]),
                RestMode.Rule => _settings[SettingField.RuleLongestRestMs] + _settings[SettingField.RestFallbackMs],
                _ => _settings[SettingField.RestMs],
            };
        }
    }

    /// <summary>Silence of a cycle switch.</summary>
    public int StallMs(int index)
    {
        int retries = _settings.OfSwitch(index, SettingField.SwitchRetries);
        int bound = (index == _settings.DoseEndingIndex ? _settings[SettingField.FirstPulseAllowanceMs] : 0)
            + ((retries + 1) * _settings.OfSwitch(index, SettingField.SwitchTimeoutMs))
            + (_switches == 1 ? retries * _settings[SettingField.RetryPauseMs] : 0)
            + _settings.OfSwitch(index, SettingField.SwitchDebounceMs) + setup.StepMs;
        return cuts ? (2 * bound) + _settings[SettingField.SaveIntervalMs] : bound;
    }
}
