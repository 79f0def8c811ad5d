using System;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>Watches whole cycles of the divider in which the pump, said to run and counted, did not turn.</summary>
internal sealed class DryCycleMonitor
{
    /// <summary>Numbers that are handed through.</summary>
    public const int NumberCount = 1;

    private readonly int _doseEnding;

    // So many that a whole window of the core's comparison lies within them, wherever it began.
    private readonly int _most;
    private int _dryCycles;
    private bool _cycleIsOpen;
    private bool _turned;

    public DryCycleMonitor(Settings settings)
    {
        bool compares = settings[SettingField.DividerCycleMm3] > 0 && settings.Is(SettingField.PumpRevolutionsFitted) && settings[SettingField.EdgesPerCycle] == 1;
        _most = compares ? (2 * settings[SettingField.VolumeWindow]) - 1 : int.MaxValue;
        _doseEnding = settings.DoseEndingIndex;
    }

    public void Begin() => (_dryCycles, _cycleIsOpen, _turned) = (0, false, false);

    public void Write(Span<int> to) => to[0] = (_dryCycles << 2) | (_cycleIsOpen ? 2 : 0) | (_turned ? 1 : 0);

    public void Read(ReadOnlySpan<int> from) => (_dryCycles, _cycleIsOpen, _turned) = (from[0] >> 2, (from[0] & 2) != 0, (from[0] & 1) != 0);

    /// <summary>A scan was made.</summary>
    /// <returns>Whether so many such cycles stand without an alarm.</returns>
    public bool IsSilent(Controller core, Inputs inputs, bool pumpBefore)
    {
        if (_most == int.MaxValue)
            return false;
        Count(core, inputs, pumpBefore);
        return _dryCycles >= _most && !core.Alarms.Stands(AlarmId.SensorsDisagree);
    }

    private void Count(Controller core, Inputs inputs, bool pumpBefore)
    {
        bool reset = core.Obeyed(Button.Reset);
        _turned |= inputs.PumpRevolutions > 0;
        if (reset)
            _dryCycles = 0;
        if (!pumpBefore || reset)
        {
            (_cycleIsOpen, _turned) = (false, false);
            return;
        }

        if (!core.AcceptedPulse(_doseEnding))
            return;
        if (_turned)
            _dryCycles = 0;
        else if (_cycleIsOpen)
            _dryCycles = Math.Min(_dryCycles + 1, _most);
        (_cycleIsOpen, _turned) = (true, false);
    }
}
