using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// Clocks that watch what takes more than one step: how long a switch has been silent, a dose has not come round, a cause has
/// lasted. They run in powered time, over power cuts too. A cut that comes sooner than one save interval after the power-up
/// starts them again: of such cuts nothing is promised but that they are alarmed.
/// </summary>
internal sealed class CoreMonitors
{
    private const int Round = 0;
    private const int FirstSwitch = 1;

    private readonly Settings _settings;
    private readonly int _stepMs;
    private readonly int _switches;
    private readonly LastingCause[] _causes;
    private readonly int[] _clocks;
    private readonly int[] _bounds;
    private readonly bool _watchesOverdue;
    private readonly RestartMonitor _restarts;
    private readonly DryCycleMonitor _dryCycles;
    private bool _ranBefore;

    public CoreMonitors(CoreSetup setup)
    {
        _settings = setup.Settings;
        _stepMs = setup.StepMs;
        _restarts = new RestartMonitor(setup);
        _dryCycles = new DryCycleMonitor(_settings);
        _switches = _settings[SettingField.SwitchCount];
        _causes = [.. LastingCause.All(setup)];
        _clocks = new int[2 + _switches + _causes.Length];
        bool cuts = setup.Alphabet.Letters.Any(letter => letter.Cut != PowerCut.None);
        _watchesOverdue = !cuts && !_settings.Is(SettingField.ShaftFitted);
        var bounds = new MonitorBounds(setup, cuts);
        _bounds = [bounds.RoundMs, .. Enumerable.Range(0, _switches).Select(bounds.StallMs), .. _causes.Select(cause => cause.BoundMs), bounds.OverdueMs];
        // The last, that of lubrication-overdue, is the shortest of them: shortened it would be missed before all others.
        for (int index = 0; index < Overdue; index++)
            _bounds[index] = (int)((long)_bounds[index] * setup.BoundPercent / 100);
    }

    /// <summary>Numbers handed through by <see cref="Write"/> and <see cref="Read"/>.</summary>
    public int Count => _clocks.Length + 1 + RestartMonitor.NumberCount + DryCycleMonitor.NumberCount;

    private int FirstCause => FirstSwitch + _switches;

    private int Overdue => _clocks.Length - 1;

    /// <summary>For how long what a property watches has lasted now, milliseconds; 0 for a property without a clock.</summary>
    public int LastedMs(CoreProperty property) => property switch
    {
        CoreProperty.DoseComesRound => _clocks[Round],
        CoreProperty.StallIsAlarmed when _switches > 0 => _clocks.Skip(FirstSwitch).Take(_switches).Max(),
        _ => 0,
    };

    public void Begin()
    {
        Array.Clear(_clocks);
        _ranBefore = true;
        _restarts.Begin();
        _dryCycles.Begin();
    }

    public void Write(Span<int> to)
    {
        _clocks.CopyTo(to);
        Span<int> rest = to[_clocks.Length..];
        rest[0] = _ranBefore ? 1 : 0;
        _restarts.Write(rest[1..]);
        _dryCycles.Write(rest[(1 + RestartMonitor.NumberCount)..]);
    }

    public void Read(ReadOnlySpan<int> from)
    {
        from[.._clocks.Length].CopyTo(_clocks);
        ReadOnlySpan<int> rest = from[_clocks.Length..];
        _ranBefore = rest[0] != 0;
        _restarts.Read(rest[1..]);
        _dryCycles.Read(rest[(1 + RestartMonitor.NumberCount)..]);
    }

    /// <summary>A scan was made.</summary>
    /// <param name="core">The core after it.</param>
    /// <param name="inputs">What it was given.</param>
    /// <param name="before">The phase before it.</param>
    /// <param name="pumpBefore">Whether the pump was on before it.</param>
    /// <param name="heldBefore">Whether an alarm held the pump before it.</param>
    /// <returns>The properties violated, one bit each.</returns>
    public int Scan(Controller core, Inputs inputs, Phase before, bool pumpBefore, bool heldBefore)
    {
        WatchRound(core, before, heldBefore);
        _restarts.Scan();
        WatchSilence(core, before, pumpBefore);
        bool silent = _dryCycles.IsSilent(core, inputs, pumpBefore) | CauseIsSilent(core, inputs) | OverdueIsSilent(core);
        _ranBefore = inputs.MachineRunning;
        int violated = silent ? CoreProperty.CauseIsAlarmed.Bit() : 0;
        if (_clocks[Round] > _bounds[Round])
            violated |= CoreProperty.DoseComesRound.Bit();
        return StallIsSilent(core) ? violated | CoreProperty.StallIsAlarmed.Bit() : violated;
    }

    /// <summary>Counts a power-up, and says whether so many were alarmed where they must be.</summary>
    public bool RestartsAreAlarmed(Controller core) => _restarts.CountPowerUp(core);

    /// <summary>Power was cut and is back.</summary>
    /// <param name="tooSoon">Whether that came sooner than one save interval after the power-up before.</param>
    public void Cut(bool tooSoon)
    {
        for (int index = 0; index < _clocks.Length; index++)
        {
            if (tooSoon || index > _switches)
                _clocks[index] = 0;
        }

        _dryCycles.Begin();
    }

    private void WatchRound(Controller core, Phase before, bool heldBefore)
    {
        bool counts = before is Phase.Rest or Phase.Dose or Phase.RetryPause && !heldBefore && !RestIsHeld(before);
        if (counts)
            Run(Round);
        if (core.Phase is Phase.Stopped or Phase.Prime or Phase.Failed or Phase.OutputTest || core.CompletedDose() || core.Obeyed(Button.Reset))
            _clocks[Round] = 0;
    }

    private bool RestIsHeld(Phase before) =>
        before == Phase.Rest && !_ranBefore && (_settings.Is(SettingField.RestOnlyWhileRunning) || _settings.RestMode == RestMode.Shaft);

    private void WatchSilence(Controller core, Phase before, bool pumpBefore)
    {
        bool runs = before == Phase.Dose && pumpBefore;
        bool pauses = before == Phase.RetryPause && _switches == 1;
        bool renewed = (before == Phase.Failed && core.Phase == Phase.Dose) || core.Obeyed(Button.Reset);
        for (int index = 0; index < _switches; index++)
        {
            if (runs || pauses)
                Run(FirstSwitch + index);
            if (renewed || core.AcceptedPulse(index))
                _clocks[FirstSwitch + index] = 0;
        }
    }

    private bool CauseIsSilent(Controller core, Inputs inputs)
    {
        bool silent = false;
        for (int index = 0; index < _causes.Length; index++)
        {
            int clock = FirstCause + index;
            if (!_causes[index].Lasts(inputs))
                _clocks[clock] = 0;
            else
                Run(clock);
            silent |= _clocks[clock] > _bounds[clock] && !core.Alarms.Stands(_causes[index].Alarm);
        }

        return silent;
    }

    /// <summary>
    /// Not with a shaft, whose standstill holds the core's own clock, nor with cuts, which put it back: beside it this clock would make
    /// five times as many states, for an alarm whose cause dose-comes-round watches.
    /// </summary>
    private bool OverdueIsSilent(Controller core)
    {
        if (!_watchesOverdue)
            return false;
        Run(Overdue);
        if (core.CompletedDose())
            _clocks[Overdue] = 0;
        return _clocks[Overdue] > _bounds[Overdue] && !core.Alarms.Stands(AlarmId.LubricationOverdue);
    }

    /// <summary>A switch found wrong is silent for a reason that is alarmed; the fault of another one says nothing of this.</summary>
    private bool StallIsSilent(Controller core)
    {
        for (int index = 0; index < _switches; index++)
        {
            bool alarmed = core.Alarms.Stands(AlarmId.DividerStalled) || (core.IsDistrusted(index) && core.Alarms.Stands(AlarmId.CycleSwitchFault));
            if (_clocks[FirstSwitch + index] > _bounds[FirstSwitch + index] && !alarmed)
                return true;
        }

        return false;
    }

    // Beyond its bound a clock need not be told apart.
    private void Run(int clock) => _clocks[clock] = Math.Min(_clocks[clock] + _stepMs, _bounds[clock] + _stepMs);
}
