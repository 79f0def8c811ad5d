using System;
using System.IO.Hashing;
using System.Linq;
using System.Numerics;
using System.Runtime.InteropServices;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// The deployed core as a machine to explore. A state is the core's own state, what was saved of it last, and the clocks that
/// watch it; a step is one scan, after which the power may be cut. What is saved, and when, is decided as in the main loop.
/// </summary>
public sealed class CoreModel : IExploredModel
{
    private const int Numbers = SavePolicy.NumberCount + 3;
    private const int PoweredAt = SavePolicy.NumberCount;
    private const int FreshAt = PoweredAt + 1;
    private const int RefusedAt = PoweredAt + 2;

    /// <summary>Steps in which inputs that have become quiet are accepted.</summary>
    internal const int SettleSteps = 4;

    // No cycle switch, and a dose that is to be ended by one.
    private static readonly Settings Refused = MakeRefused();

    private readonly CoreSetup _setup;
    private readonly Inputs _inputs = new();
    private readonly Outputs _outputs = new();
    private readonly IRestRule? _rule;
    private readonly Controller _core;
    private readonly CoreMonitors _monitors;
    private readonly SavePolicy _saves;
    private readonly byte[] _state;
    private readonly byte[] _saved;
    private readonly byte[] _compared;
    private readonly int[] _numbers;
    private readonly int _doseEnding;
    private readonly int _intervalMs;
    private readonly int _settleMs;
    private readonly bool _byPressure;
    private readonly bool _cuts;
    private UInt128 _savedPrint;
    private int _poweredMs;
    private bool _fresh;
    private bool _refused;
    private uint _nowMs;

    /// <summary>Makes the machine.</summary>
    public CoreModel(CoreSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        _setup = setup;
        _rule = setup.MakeRule?.Invoke();
        _core = new Controller(_inputs, _outputs, setup.Settings, _rule);
        _monitors = new CoreMonitors(setup);
        _state = new byte[_core.StateLength];
        _saved = new byte[_core.StateLength];
        _compared = new byte[_core.StateLength];
        _numbers = new int[Numbers + _monitors.Count];
        _doseEnding = setup.Settings.DoseEndingIndex;
        _intervalMs = setup.Settings[SettingField.SaveIntervalMs];
        _saves = new SavePolicy(_intervalMs);
        _settleMs = LongestDelayMs(setup);
        _cuts = setup.Alphabet.Letters.Any(letter => letter.Cut != PowerCut.None);
        _byPressure = setup.Settings.DoseMode == DoseMode.Pressure;
    }

    /// <summary>What this machine came by.</summary>
    public CoreCoverage Coverage { get; } = new();

    internal Controller Core => _core;

    internal Outputs Outputs => _outputs;

    internal CoreMonitors Monitors => _monitors;

    internal int SavedStanding => _saves.SavedStanding;

    /// <inheritdoc/>
    public int StateLength => _state.Length + SavedLength + (4 * _numbers.Length);

    /// <inheritdoc/>
    public int CompareLength => _compared.Length + 16 + (4 * _numbers.Length);

    /// <summary>Where power is never cut what was saved does not matter.</summary>
    private int SavedLength => _cuts ? _saved.Length + 16 : 0;

    /// <inheritdoc/>
    public int Letters => _setup.Alphabet.Letters.Count;

    /// <summary>Steps for which a probe leaves everything quiet before it presses a button.</summary>
    public int QuietSteps => (_settleMs / _setup.StepMs) + SettleSteps;

    /// <inheritdoc/>
    public void WriteFirst(Span<byte> state)
    {
        _monitors.Begin();
        PowerUp(PowerCut.None);
        Write(state);
    }

    /// <inheritdoc/>
    public int Take(ReadOnlySpan<byte> state, int letter)
    {
        Letter taken = _setup.Alphabet.Letters[letter];
        Load(state);
        Phase before = _core.Phase;
        bool pumpBefore = _outputs.Pump;
        int standingBefore = _core.Alarms.Standing;
        bool heldBefore = AlarmFacts.HoldingOf(standingBefore) != 0;
        Scan(taken.Inputs);
        Coverage.Note(before, _core);
        int violated = Judge(before, standingBefore) | _monitors.Scan(_core, _inputs, before, pumpBefore, heldBefore);
        if (violated != 0 && !_setup.GoesOn)
            return Told(violated);
        if (_cuts)
        {
            bool due = _saves.IsDue(_core);
            if (taken.Cut == PowerCut.CutInSave && !due)
                return IExploredModel.NoSuchMove;
            if (due && taken.Cut != PowerCut.CutInSave)
                Save();
            if (taken.Cut != PowerCut.None)
                violated |= Cut(taken.Cut);
        }

        return Told(violated);
    }

    /// <inheritdoc/>
    public int Compare(Span<byte> buffer)
    {
        int length = _core.SaveState(_compared, StateUse.Compare);
        _compared.AsSpan(0, length).CopyTo(buffer);
        if (_cuts)
        {
            MemoryMarshal.Write(buffer[length..], _savedPrint);
            length += 16;
        }

        PutNumbers();
        MemoryMarshal.AsBytes(_numbers.AsSpan()).CopyTo(buffer[length..]);
        return length + (4 * _numbers.Length);
    }

    /// <inheritdoc/>
    public void Write(Span<byte> state)
    {
        _core.SaveState(_state, StateUse.Step);
        _state.CopyTo(state);
        if (_cuts)
        {
            _saved.CopyTo(state[_state.Length..]);
            MemoryMarshal.Write(state[(2 * _state.Length)..], _savedPrint);
        }

        PutNumbers();
        MemoryMarshal.AsBytes(_numbers.AsSpan()).CopyTo(state[(_state.Length + SavedLength)..]);
    }

    /// <inheritdoc/>
    public int Probe()
    {
        Coverage.NoteStates(_core);
        return Told(_core.Phase switch
        {
            Phase.Failed => ResetLeavesFailed() ? 0 : Bit(CoreProperty.ResetLeavesFailed),
            Phase.Stopped => StartLeavesStopped() ? 0 : Bit(CoreProperty.StartLeavesStopped),
            _ => 0,
        });
    }

    private static int Bit(CoreProperty property) => 1 << (int)property;

    /// <summary>What a search is told of properties that are violated: the first, or none where it goes on.</summary>
    private int Told(int violated)
    {
        if (violated == 0)
            return IExploredModel.Holds;
        Coverage.Violated |= violated;
        return _setup.GoesOn ? IExploredModel.Holds : BitOperations.TrailingZeroCount(violated);
    }

    private static Settings MakeRefused()
    {
        var settings = new Settings();
        settings[SettingField.SwitchCount] = 0;
        return settings;
    }

    private static int LongestDelayMs(CoreSetup setup)
    {
        Settings settings = setup.Settings;
        int longest = settings[SettingField.ChatterWindowMs] * (settings[SettingField.ChatterChanges] > 0 ? 2 : 0);
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            // Only alarms that keep the phase failed are waited for.
            if (AlarmTable.Spec((AlarmId)index).Action == AlarmAction.Interlock || index == (int)AlarmId.CycleSwitchFault)
                longest = Math.Max(longest, settings[SettingField.DelayOff((AlarmId)index)] + Math.Max(settings[SettingField.LevelDebounceMs], settings[SettingField.OverloadDebounceMs]));
        }

        return Math.Max(longest, settings[SettingField.ButtonDebounceMs]);
    }

    private void Load(ReadOnlySpan<byte> state)
    {
        state[.._state.Length].CopyTo(_state);
        if (_cuts)
        {
            state.Slice(_state.Length, _state.Length).CopyTo(_saved);
            _savedPrint = MemoryMarshal.Read<UInt128>(state[(2 * _state.Length)..]);
        }

        MemoryMarshal.Cast<byte, int>(state[(_state.Length + SavedLength)..]).CopyTo(_numbers);
        _saves.CopyFrom(_numbers);
        _poweredMs = _numbers[PoweredAt];
        _fresh = _numbers[FreshAt] != 0;
        UseSettings(_numbers[RefusedAt] != 0);
        _monitors.Read(_numbers.AsSpan(Numbers));
        _core.RestoreState(_state, StateUse.Step);
        _nowMs = 0;
    }

    private void PutNumbers()
    {
        _saves.CopyTo(_numbers);
        _numbers[PoweredAt] = _poweredMs;
        _numbers[FreshAt] = _fresh ? 1 : 0;
        _numbers[RefusedAt] = _refused ? 1 : 0;
        _monitors.Write(_numbers.AsSpan(Numbers));
    }

    /// <summary>The first scan after a power-up comes at once: no time has passed for it.</summary>
    private void Scan(Inputs inputs)
    {
        _inputs.CopyFrom(inputs);
        int elapsedMs = _fresh ? 0 : _setup.StepMs;
        _fresh = false;
        _nowMs += (uint)elapsedMs;
        _core.Scan(_nowMs);
        if (!_cuts)
            return;
        _saves.Advance(elapsedMs);
        _poweredMs = Math.Min(_poweredMs + elapsedMs, 2 * _intervalMs);
    }

    /// <summary>What must hold after every scan; what does not, one bit each.</summary>
    private int Judge(Phase before, int standingBefore)
    {
        int standing = _core.Alarms.Standing;
        bool interlock = AlarmFacts.InterlocksOf(standing) != 0;
        bool holding = AlarmFacts.HoldingOf(standing) != 0;
        bool failure = AlarmFacts.FailuresOf(standing, _core, _doseEnding) != 0;
        int stopping = AlarmFacts.StoppingOf(standing, _core, _doseEnding);
        Phase phase = _core.Phase;
        int violated = 0;
        if (_outputs.Pump && interlock)
            violated |= Bit(CoreProperty.PumpOffUnderInterlock);
        if (_outputs.Pump && (_inputs.Stop || holding))
            violated |= Bit(CoreProperty.PumpOffOnStop);
        if (_outputs.HealthyRelay && failure)
            violated |= Bit(CoreProperty.RelayTellsFailure);
        if (phase == Phase.Failed && stopping == 0)
            violated |= Bit(CoreProperty.FailedHasCause);
        // A new try that is due in the scan of a reset is no doing of the reset: the failure stands on.
        bool trying = _setup.Settings[SettingField.NewTryDelayMs] > 0 && stopping != 0;
        if (_outputs.Pump && before == Phase.Failed && !trying && CoreMonitors.Pressed(_core, Button.Reset))
            violated |= Bit(CoreProperty.NoStartByReset);
        if (phase == Phase.Dose && before == Phase.Dose && (stopping & ~standingBefore) != 0)
            violated |= Bit(CoreProperty.DoseEnds);
        if ((_refused && !_core.Alarms.Stands(AlarmId.SettingsInvalid)) || RuleFaultUntold())
            violated |= Bit(CoreProperty.CauseIsAlarmed);
        if (phase == Phase.OutputTest ? _outputs.Pump : !FollowsState(phase, standing, holding, failure))
            violated |= Bit(CoreProperty.OutputsFollow);
        return violated;
    }

    /// <summary>Whether the rule, asked as the core asks it, wants a longer rest than it may, and nothing tells of it.</summary>
    private bool RuleFaultUntold()
    {
        if (_rule == null || _setup.Settings.RestMode != RestMode.Rule || _core.DosePending || _core.Alarms.Stands(AlarmId.RuleFault))
            return false;
        int remainingMs = _rule.RemainingMs(_inputs);
        return remainingMs < 0 || remainingMs > _setup.Settings[SettingField.RuleLongestRestMs];
    }

    private bool FollowsState(Phase phase, int standing, bool holding, bool failure)
    {
        bool pump = (phase == Phase.Dose && (!_byPressure || _core.DoseStep is DoseStep.Pressurise or DoseStep.Hold)) || phase == Phase.Prime;
        int shown = 0;
        for (int left = standing; left != 0; left &= left - 1)
        {
            int index = BitOperations.TrailingZeroCount(left);
            if (_core.Alarms.StateOf((AlarmId)index) is not (AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService))
                shown |= 1 << index;
        }

        bool warning = phase is Phase.Stopped or Phase.Prime || (shown & ~AlarmFacts.FailuresOf(shown, _core, _doseEnding)) != 0;
        return _outputs.Pump == (pump && !holding)
            && _outputs.HealthyRelay == !failure
            && _outputs.Warning == warning
            && (_core.Alarms.AnyUnseen || _outputs.Lamp == (shown != 0));
    }

    private void Save()
    {
        _saves.Saved(_core);
        _core.SaveState(_saved, StateUse.Step);
        int length = _core.SaveState(_compared, StateUse.Compare);
        _savedPrint = XxHash128.HashToUInt128(_compared.AsSpan(0, length));
    }

    /// <summary>Power is cut and comes back: what was saved last is restored. What is violated by that, one bit each.</summary>
    private int Cut(PowerCut cut)
    {
        // Of a save that is torn nothing is left, so power must have lasted for two intervals for something to be promised.
        bool tooSoon = _poweredMs < (cut == PowerCut.CutInSave ? 2 * _intervalMs : _intervalMs);
        int standing = _saves.SavedStanding;
        _core.RestoreState(_saved, StateUse.Step);
        UseSettings(cut == PowerCut.SettingsLost);
        PowerUp(cut);
        _monitors.Cut(tooSoon);
        int violated = (standing & ~_core.Alarms.Standing) != 0 || !LatchesOutlastAScan() ? Bit(CoreProperty.AlarmSurvivesCut) : 0;
        if (!Told(cut) || !_monitors.RestartsTold(_core))
            violated |= Bit(CoreProperty.CauseIsAlarmed);
        return _outputs.Pump ? violated | Bit(CoreProperty.NoStartByReset) : violated;
    }

    /// <summary>Whether all that is latched at power-up is so after the first scan, too; the core is left as it was.</summary>
    private bool LatchesOutlastAScan()
    {
        int latched = _core.Alarms.Latched;
        if (latched == 0)
            return true;
        _core.SaveState(_state, StateUse.Step);
        _inputs.CopyFrom(_setup.Alphabet.Quiet);
        _core.Scan(_nowMs);
        bool kept = (latched & ~_core.Alarms.Latched) == 0;
        _core.RestoreState(_state, StateUse.Step);
        return kept;
    }

    /// <summary>Whether what the main loop found at its restart is alarmed at once.</summary>
    private bool Told(PowerCut cut) => cut switch
    {
        PowerCut.LoopFault => _core.Alarms.Stands(AlarmId.LogicFault),
        PowerCut.BlockLost => _core.Alarms.Stands(AlarmId.StorageCorrupt),
        _ => true,
    };

    private void UseSettings(bool refused)
    {
        if (_refused == refused)
            return;
        _refused = refused;
        _core.UseSettings(refused ? Refused : _setup.Settings);
    }

    private void PowerUp(PowerCut cut)
    {
        _core.PowerUp();
        if (cut == PowerCut.LoopFault)
            _core.NoteLogicFault();
        if (cut == PowerCut.BlockLost)
            _core.NoteStorageCorrupt();
        _fresh = true;
        _poweredMs = 0;
        Save();
        _saves.Begin(_core);
    }

    /// <summary>A new try may have left failed in the meantime: what counts is what stands in the scan that obeys the press.</summary>
    private bool ResetLeavesFailed() =>
        IsObeyedWhenQuiet(Button.Reset, QuietSteps) && _core.Phase != Phase.Failed && !_core.Alarms.PumpStoppingStands;

    private bool StartLeavesStopped() =>
        IsObeyedWhenQuiet(Button.Start, SettleSteps) && (_core.Phase == Phase.Failed) == _core.Alarms.PumpStoppingStands && _core.Phase is Phase.Rest or Phase.Dose or Phase.Failed;

    /// <summary>With everything quiet for a while, a button is pressed.</summary>
    private bool IsObeyedWhenQuiet(Button button, int quietSteps)
    {
        UseSettings(false);
        for (int step = 0; step < quietSteps; step++)
            Scan(_setup.Alphabet.Quiet);
        bool obeyed = false;
        for (int step = 0; step < 2 && !obeyed; step++)
        {
            _inputs.CopyFrom(_setup.Alphabet.Quiet);
            Alphabet.Hold(_inputs, button);
            _nowMs += (uint)Math.Max(_setup.StepMs, _setup.Settings[SettingField.ButtonDebounceMs]);
            _core.Scan(_nowMs);
            obeyed = CoreMonitors.Pressed(_core, button);
        }

        return obeyed;
    }
}
