using System;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>Watches that so many restarts within a window are alarmed.</summary>
internal sealed class RestartMonitor(CoreSetup setup)
{
    /// <summary>Numbers that are handed through.</summary>
    public const int NumberCount = 2;

    private readonly int _most = setup.Settings[SettingField.RestartsMost];
    private readonly int _windowMs = setup.Settings[SettingField.RestartWindowMs];
    private int _restarts;
    private int _passedMs;

    public void Begin() => (_restarts, _passedMs) = (0, 0);

    public void Write(Span<int> to) => (to[0], to[1]) = (_restarts, _passedMs);

    public void Read(ReadOnlySpan<int> from) => (_restarts, _passedMs) = (from[0], from[1]);

    /// <summary>A scan was made.</summary>
    public void Scan()
    {
        if (_restarts == 0)
            return;
        _passedMs += setup.StepMs;
        if (_passedMs >= _windowMs)
            Begin();
    }

    /// <summary>
    /// Whether so many restarts have come within a window that the core must have alarmed them. Its own window begins when it
    /// likes and lasts longer than this one, by what a cut takes of the time saved; but of twice as many restarts as are too many, all
    /// within one window, one of the two that it can have had in the meantime saw too many.
    /// </summary>
    public bool CountPowerUp(Controller core)
    {
        if (_most == 0)
            return true;
        if (core.Alarms.Stands(AlarmId.RestartUnexpected))
            _restarts = 0;
        else if (_restarts++ == 0)
            _passedMs = 0;
        return _restarts < 2 * (_most + 1);
    }
}
