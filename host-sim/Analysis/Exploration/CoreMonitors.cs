using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// Clocks that watch what takes more than one step: how long a switch has been silent, a dose has not come round, a cause has
/// lasted. They run in powered time, over power cuts too. A cut that comes sooner than one save interval after the power-up
/// starts them anew: of such cuts nothing is promised but that they are told.
/// </summary>
/// <remarks>
/// With cuts at least one save interval apart what is saved is at least half of what is lived, so a bound B in saved time is
/// at most 2 B and one interval in powered time. A cut that tears the save of an interval takes that interval along, so it must
/// be two intervals apart from the power-up. Each cut of a dose also costs the restart delay anew.
/// </remarks>
internal sealed class CoreMonitors
{
    private readonly Settings _settings;
    private readonly int _stepMs;
    private readonly int _doseEnding;
    private readonly int _switches;
    private readonly Cause[] _causes;
    private readonly int[] _clocks;
    private readonly int[] _bounds;
    private readonly int _restartsMost;
    private readonly bool _watchesOverdue;

    // So many that a whole window of the comparison lies within them, wherever it began.
    private readonly int _dryCyclesMost;
    private bool _ranBefore;
    private int _restarts;
    private int _restartWindowMs;
    private int _dryCycles;
    private bool _cycleOpen;
    private bool _turned;

    public CoreMonitors(CoreSetup setup)
    {
        _settings = setup.Settings;
        _stepMs = setup.StepMs;
        _restartsMost = _settings[SettingField.RestartsMost];
        bool compares = _settings[SettingField.DividerCycleMm3] > 0 && _settings.Is(SettingField.PumpRevolutionsFitted) && _settings[SettingField.EdgesPerCycle] == 1;
        _dryCyclesMost = compares ? (2 * _settings[SettingField.VolumeWindow]) - 1 : int.MaxValue;
        _doseEnding = _settings.DoseEndingIndex;
        _switches = _settings[SettingField.SwitchCount];
        _causes = [.. Cause.All(setup)];
        _clocks = new int[2 + _switches + _causes.Length];
        bool cuts = setup.Alphabet.Letters.Any(letter => letter.Cut != PowerCut.None);
        _watchesOverdue = !cuts && !_settings.Is(SettingField.ShaftFitted);
        _bounds = [RoundBoundMs(cuts), .. Enumerable.Range(0, _switches).Select(index => StallBoundMs(index, cuts)), .. _causes.Select(cause => cause.BoundMs), OverdueBoundMs];
        // The last, that of lubrication-overdue, is the shortest of them: shortened it would be missed before all others.
        for (int index = 0; index < Overdue; index++)
            _bounds[index] = (int)((long)_bounds[index] * setup.BoundPercent / 100);
    }

    /// <summary>Numbers handed through by <see cref="Write"/> and <see cref="Read"/>.</summary>
    public int Count => _clocks.Length + 4;

    /// <summary>The bounds in words, for reports.</summary>
    public IEnumerable<string> Bounds =>
        new[] { $"a dose comes round within {_bounds[0]} ms" }
            .Concat(Enumerable.Range(0, _switches).Select(index => $"silence of switch {index + 1} is alarmed within {_bounds[1 + index]} ms"))
            .Concat(_causes.Select((cause, index) => $"{AlarmTable.Spec(cause.Alarm).Name} is raised within {_bounds[1 + _switches + index]} ms"))
            .Concat(!_watchesOverdue ? [] : new[] { $"{AlarmTable.Spec(AlarmId.LubricationOverdue).Name} is raised within {_bounds[Overdue]} ms without a completed dose" });

    /// <summary>For how long what a property watches has lasted now, milliseconds; 0 for a property without a clock.</summary>
    public int LastedMs(CoreProperty property) => property switch
    {
        CoreProperty.DoseComesRound => _clocks[0],
        CoreProperty.StallIsAlarmed when _switches > 0 => _clocks.Skip(1).Take(_switches).Max(),
        _ => 0,
    };

    public void Begin()
    {
        Array.Clear(_clocks);
        _ranBefore = true;
        _restarts = 0;
        _restartWindowMs = 0;
        _dryCycles = 0;
        _cycleOpen = false;
        _turned = false;
    }

    public void Write(Span<int> to)
    {
        _clocks.CopyTo(to);
        to[_clocks.Length] = _ranBefore ? 1 : 0;
        to[_clocks.Length + 1] = _restarts;
        to[_clocks.Length + 2] = _restartWindowMs;
        to[_clocks.Length + 3] = (_dryCycles << 2) | (_cycleOpen ? 2 : 0) | (_turned ? 1 : 0);
    }

    public void Read(ReadOnlySpan<int> from)
    {
        from[.._clocks.Length].CopyTo(_clocks);
        _ranBefore = from[_clocks.Length] != 0;
        _restarts = from[_clocks.Length + 1];
        _restartWindowMs = from[_clocks.Length + 2];
        _dryCycles = from[_clocks.Length + 3] >> 2;
        _cycleOpen = (from[_clocks.Length + 3] & 2) != 0;
        _turned = (from[_clocks.Length + 3] & 1) != 0;
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
        WatchRestarts();
        WatchVolume(core, inputs, pumpBefore);
        WatchSilence(core, before, pumpBefore);
        int violated = WatchCauses(core, inputs) | WatchOverdue(core);
        _ranBefore = inputs.MachineRunning;
        if (_dryCycles >= _dryCyclesMost && !core.Alarms.Stands(AlarmId.SensorsDisagree))
            violated |= 1 << (int)CoreProperty.CauseIsAlarmed;
        if (_clocks[0] > _bounds[0])
            violated |= 1 << (int)CoreProperty.DoseComesRound;
        return violated | StallNotAlarmed(core);
    }

    /// <summary>
    /// Whether so many restarts have come within a window that the core must have told of them. Its own window begins when it
    /// likes and lasts longer than this one, by what a cut takes of the time saved; but of twice as many restarts as are too many, all
    /// within one window, one of the two that it can have had in the meantime saw too many.
    /// </summary>
    public bool RestartsTold(Controller core)
    {
        if (_restartsMost == 0)
            return true;
        if (core.Alarms.Stands(AlarmId.RestartUnexpected))
            _restarts = 0;
        else if (_restarts++ == 0)
            _restartWindowMs = 0;
        return _restarts < 2 * (_restartsMost + 1);
    }

    /// <summary>Power was cut and is back.</summary>
    /// <param name="tooSoon">Whether that came sooner than one save interval after the power-up before.</param>
    public void Cut(bool tooSoon)
    {
        for (int index = 0; index < _clocks.Length; index++)
        {
            if (tooSoon || index > _switches)
                _clocks[index] = 0;
        }

        (_dryCycles, _cycleOpen, _turned) = (0, false, false);
    }

    /// <summary>Whole cycles of the divider in which the pump, said to run and counted, did not turn.</summary>
    private void WatchVolume(Controller core, Inputs inputs, bool pumpBefore)
    {
        if (_dryCyclesMost == int.MaxValue)
            return;
        _turned |= inputs.PumpRevolutions > 0;
        if (Pressed(core, Button.Reset))
            _dryCycles = 0;
        if (!pumpBefore || Pressed(core, Button.Reset))
        {
            (_cycleOpen, _turned) = (false, false);
            return;
        }

        if (!Gave(core, _doseEnding))
            return;
        if (_turned)
            _dryCycles = 0;
        else if (_cycleOpen)
            _dryCycles = Math.Min(_dryCycles + 1, _dryCyclesMost);
        (_cycleOpen, _turned) = (true, false);
    }

    private void WatchRestarts()
    {
        if (_restarts == 0)
            return;
        _restartWindowMs += _stepMs;
        if (_restartWindowMs < _settings[SettingField.RestartWindowMs])
            return;
        _restarts = 0;
        _restartWindowMs = 0;
    }

    private void WatchRound(Controller core, Phase before, bool heldBefore)
    {
        bool counts = before is Phase.Rest or Phase.Dose or Phase.RetryPause && !heldBefore && !RestHeld(before);
        if (counts)
            Run(0);
        if (core.Phase is Phase.Stopped or Phase.Prime or Phase.Failed or Phase.OutputTest || Has(core, ScanEvent.DoseCompleted) || Pressed(core, Button.Reset))
            _clocks[0] = 0;
    }

    private bool RestHeld(Phase before) =>
        before == Phase.Rest && !_ranBefore && (_settings.Is(SettingField.RestOnlyWhileRunning) || _settings.RestMode == RestMode.Shaft);

    private void WatchSilence(Controller core, Phase before, bool pumpBefore)
    {
        bool runs = before == Phase.Dose && pumpBefore;
        bool pauses = before == Phase.RetryPause && _switches == 1;
        bool renewed = (before == Phase.Failed && core.Phase == Phase.Dose) || Pressed(core, Button.Reset);
        for (int index = 0; index < _switches; index++)
        {
            if (runs || pauses)
                Run(1 + index);
            if (renewed || Gave(core, index))
                _clocks[1 + index] = 0;
        }
    }

    private int WatchCauses(Controller core, Inputs inputs)
    {
        int violated = 0;
        for (int index = 0; index < _causes.Length; index++)
        {
            int clock = 1 + _switches + index;
            if (!_causes[index].Lasts(inputs))
                _clocks[clock] = 0;
            else
                Run(clock);
            if (_clocks[clock] > _bounds[clock] && !core.Alarms.Stands(_causes[index].Alarm))
                violated = 1 << (int)CoreProperty.CauseIsAlarmed;
        }

        return violated;
    }

    /// <summary>
    /// Not with a shaft, whose standstill holds the core's own clock, nor with cuts, which put it back: beside it this clock would make
    /// five times as many states, for an alarm whose cause dose-comes-round watches.
    /// </summary>
    private int WatchOverdue(Controller core)
    {
        if (!_watchesOverdue)
            return 0;
        Run(Overdue);
        if (Has(core, ScanEvent.DoseCompleted))
            _clocks[Overdue] = 0;
        return _clocks[Overdue] > _bounds[Overdue] && !core.Alarms.Stands(AlarmId.LubricationOverdue) ? 1 << (int)CoreProperty.CauseIsAlarmed : 0;
    }

    /// <summary>A switch found wrong is silent for a reason that is told; the fault of another one tells nothing of this.</summary>
    private int StallNotAlarmed(Controller core)
    {
        for (int index = 0; index < _switches; index++)
        {
            bool told = core.Alarms.Stands(AlarmId.DividerStalled) || (core.IsDistrusted(index) && core.Alarms.Stands(AlarmId.CycleSwitchFault));
            if (_clocks[1 + index] > _bounds[1 + index] && !told)
                return 1 << (int)CoreProperty.StallIsAlarmed;
        }

        return 0;
    }

    // Beyond its bound a clock need not be told apart.
    private void Run(int clock) => _clocks[clock] = Math.Min(_clocks[clock] + _stepMs, _bounds[clock] + _stepMs);

    private int StallBoundMs(int index, bool cuts)
    {
        int retries = _settings.OfSwitch(index, SettingField.SwitchRetries);
        int bound = (index == _doseEnding ? _settings[SettingField.FirstPulseAllowanceMs] : 0)
            + ((retries + 1) * _settings.OfSwitch(index, SettingField.SwitchTimeoutMs))
            + (_switches == 1 ? retries * _settings[SettingField.RetryPauseMs] : 0)
            + _settings.OfSwitch(index, SettingField.SwitchDebounceMs) + _stepMs;
        return cuts ? (2 * bound) + _settings[SettingField.SaveIntervalMs] : bound;
    }

    private int Overdue => _clocks.Length - 1;

    private int OverdueBoundMs => _settings[SettingField.OverdueMs] + _settings[SettingField.DelayOn(AlarmId.LubricationOverdue)] + (2 * _stepMs);

    private int RoundBoundMs(bool cuts)
    {
        int pauses = 0;
        for (int index = 0; index < _switches; index++)
            pauses += _settings.OfSwitch(index, SettingField.SwitchRetries) * _settings[SettingField.RetryPauseMs];
        // A dose by pressure stands still to recharge, and once in each pressure cycle to vent.
        int vents = _settings.DoseMode == DoseMode.Pressure ? (_settings[SettingField.PressureCycles] + 1) * _settings[SettingField.VentLimitMs] : 0;
        int restart = _settings[SettingField.RestartDelayMs];
        int bound = LongestRestMs + vents + restart + _settings[SettingField.DoseLimitMs] + (pauses * (_settings[SettingField.DoseEdges] + 1)) + (3 * _stepMs);
        int interval = _settings[SettingField.SaveIntervalMs];
        return cuts ? (2 * (int)((long)bound * interval / Math.Max(1, interval - restart))) + interval : bound;
    }

    private int LongestRestMs
    {
        get
        {
            int shaft = _settings.RestShaftPulses * (_settings[SettingField.ShaftLostMs] + _stepMs);
            return _settings.RestMode switch
            {
                RestMode.Shaft => Math.Max(shaft, _settings[SettingField.RestFallbackMs] + _settings[SettingField.ShaftLostMs]),
                RestMode.Rule => _settings[SettingField.RuleLongestRestMs] + _settings[SettingField.RestFallbackMs],
                _ => _settings[SettingField.RestMs],
            };
        }
    }

    private static bool Gave(Controller core, int index)
    {
        ScanEvents events = core.Events;
        for (int one = 0; one < events.Count; one++)
        {
            bool edge = events.Kind(one) is ScanEvent.PulseCounted or ScanEvent.PulseOpened or ScanEvent.PulseCredited or ScanEvent.PulseSeen;
            if (edge && events.Subject(one) == index)
                return true;
        }

        return false;
    }

    internal static bool Pressed(Controller core, Button button)
    {
        ScanEvents events = core.Events;
        for (int one = 0; one < events.Count; one++)
        {
            if (events.Kind(one) == ScanEvent.PressObeyed && events.Subject(one) == (int)button)
                return true;
        }

        return false;
    }

    private static bool Has(Controller core, ScanEvent kind)
    {
        ScanEvents events = core.Events;
        for (int one = 0; one < events.Count; one++)
        {
            if (events.Kind(one) == kind)
                return true;
        }

        return false;
    }

    /// <summary>An input that raises an alarm by lasting.</summary>
    private sealed record Cause(AlarmId Alarm, Func<Inputs, bool> Lasts, int BoundMs)
    {
        public static IEnumerable<Cause> All(CoreSetup setup)
        {
            Settings settings = setup.Settings;
            Alphabet alphabet = setup.Alphabet;
            int grace = 2 * setup.StepMs;
            int Bound(AlarmId id, int beforeMs) => beforeMs + settings[SettingField.DelayOn(id)] + grace;
            if (alphabet.Has(ExploredInput.LevelEmpty) && settings.Is(SettingField.LevelEmptyFitted))
                yield return new(AlarmId.ReservoirEmpty, inputs => inputs.LevelEmpty != settings.Is(SettingField.LevelEmptyInverted), Bound(AlarmId.ReservoirEmpty, settings[SettingField.LevelDebounceMs]));
            if (alphabet.Has(ExploredInput.LevelLow) && settings.Is(SettingField.LevelLowFitted))
                yield return new(AlarmId.ReservoirLow, inputs => inputs.LevelLow != settings.Is(SettingField.LevelLowInverted), Bound(AlarmId.ReservoirLow, settings[SettingField.LevelDebounceMs]));
            if (alphabet.Has(ExploredInput.PumpOverload) && settings.Is(SettingField.OverloadFitted))
                yield return new(AlarmId.PumpOverload, inputs => inputs.PumpOverload != settings.Is(SettingField.OverloadInverted), Bound(AlarmId.PumpOverload, settings[SettingField.OverloadDebounceMs]));
            if (alphabet.Has(ExploredInput.PressureMbar) && settings.Is(SettingField.PressureTransmitterFitted))
                yield return new(AlarmId.LineOverpressure, inputs => inputs.PressureMbar > settings[SettingField.PressureLimitMbar], Bound(AlarmId.LineOverpressure, 0));
            int span = settings[SettingField.PressureSpanMbar];
            if (alphabet.Has(ExploredInput.PressureMbar) && settings.Is(SettingField.PressureTransmitterFitted) && span > 0)
                yield return new(AlarmId.PressureSignalLost, inputs => inputs.PressureMbar < -(span / 40) || inputs.PressureMbar > span + (span / 16), Bound(AlarmId.PressureSignalLost, 0));
            if (alphabet.Has(ExploredInput.ScanLate))
                yield return new(AlarmId.ScanOverrun, inputs => inputs.ScanLate, Bound(AlarmId.ScanOverrun, 0));
            if (alphabet.Has(ExploredInput.SupplyMv) && settings.Is(SettingField.SupplyMeasured))
                yield return new(AlarmId.SupplyLow, inputs => inputs.SupplyMv < settings[SettingField.SupplyLimitMv], Bound(AlarmId.SupplyLow, 0));
            if (alphabet.Has(ExploredInput.TemperatureDeciC) && settings.Is(SettingField.ColdJudged))
                yield return new(AlarmId.LubricantCold, inputs => inputs.TemperatureDeciC < settings[SettingField.ColdLimitDeciC], Bound(AlarmId.LubricantCold, 0));
            if (alphabet.Has(ExploredInput.ShaftPulses) && settings.Is(SettingField.ShaftFitted))
                yield return new(AlarmId.ShaftSignalLost, inputs => inputs.MachineRunning && inputs.ShaftPulses == 0, Bound(AlarmId.ShaftSignalLost, settings[SettingField.ShaftLostMs]));
        }
    }
}
