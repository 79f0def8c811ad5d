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
    private const int Numbers = 5;
    private const int VentingBit = 1 << 8;

    /// <summary>Steps in which inputs that have become quiet are accepted.</summary>
    internal const int SettleSteps = 4;

    private readonly CoreSetup _setup;
    private readonly Inputs _inputs = new();
    private readonly Outputs _outputs = new();
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
    private uint _nowMs;

    /// <summary>Makes the machine.</summary>
    public CoreModel(CoreSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        _setup = setup;
        _core = new Controller(_inputs, _outputs, setup.Settings, setup.MakeRule?.Invoke());
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
        PowerUp();
        Write(state);
    }

    /// <inheritdoc/>
    public int Take(ReadOnlySpan<byte> state, int letter)
    {
        Letter taken = _setup.Alphabet.Letters[letter];
        Load(state);
        Phase before = _core.Phase;
        bool pumpBefore = _outputs.Pump;
        bool heldBefore = AlarmFacts.HoldingOf(_core.Alarms.Standing) != 0;
        Scan(taken.Inputs);
        Coverage.Note(before, _core);
        int violated = Judge(before);
        if (violated < 0)
            violated = _monitors.Scan(_core, _inputs, before, pumpBefore, heldBefore);
        if (violated >= 0)
            return violated;
        if (!_cuts)
            return IExploredModel.Holds;
        bool due = _saves.IsDue(_core);
        if (taken.Cut == PowerCut.CutInSave && !due)
            return IExploredModel.NoSuchMove;
        if (due && taken.Cut != PowerCut.CutInSave)
            Save();
        return taken.Cut == PowerCut.None ? IExploredModel.Holds : Cut(taken.Cut == PowerCut.CutInSave ? 2 * _intervalMs : _intervalMs);
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
        return _core.Phase switch
        {
            Phase.Failed => Leaves(Button.Reset, QuietSteps) ? IExploredModel.Holds : (int)CoreProperty.ResetLeavesFailed,
            Phase.Stopped => Leaves(Button.Start, SettleSteps) ? IExploredModel.Holds : (int)CoreProperty.StartLeavesStopped,
            _ => IExploredModel.Holds,
        };
    }

    private static int LongestDelayMs(CoreSetup setup)
    {
        Settings settings = setup.Settings;
        int longest = settings[SettingField.ChatterWindowMs] * (settings[SettingField.ChatterChanges] > 0 ? 2 : 0);
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            // Only alarms that keep the phase failed are waited for.
            if (AlarmTable.ActionOf((AlarmId)index) == AlarmAction.Interlock || index == (int)AlarmId.CycleSwitchFault)
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
        _saves.Resume(_numbers[0], (Phase)(_numbers[3] & ~VentingBit), _numbers[2], (_numbers[3] & VentingBit) != 0);
        _poweredMs = _numbers[1];
        _fresh = _numbers[4] != 0;
        _monitors.Read(_numbers.AsSpan(Numbers));
        _core.RestoreState(_state, StateUse.Step);
        _nowMs = 0;
    }

    private void PutNumbers()
    {
        _numbers[0] = _saves.SinceMs;
        _numbers[1] = _poweredMs;
        _numbers[2] = _saves.SavedStanding;
        _numbers[3] = (int)_saves.SavedPhase | (_saves.SavedVenting ? VentingBit : 0);
        _numbers[4] = _fresh ? 1 : 0;
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

    /// <summary>What must hold after every scan.</summary>
    private int Judge(Phase before)
    {
        int standing = _core.Alarms.Standing;
        bool interlock = AlarmFacts.InterlocksOf(standing) != 0;
        bool holding = AlarmFacts.HoldingOf(standing) != 0;
        bool failure = AlarmFacts.FailuresOf(standing, _core, _doseEnding) != 0;
        Phase phase = _core.Phase;
        if (_outputs.Pump && interlock)
            return (int)CoreProperty.PumpOffUnderInterlock;
        if (_outputs.Pump && (_inputs.Stop || holding))
            return (int)CoreProperty.PumpOffOnStop;
        if (_outputs.HealthyRelay && failure)
            return (int)CoreProperty.RelayTellsFailure;
        if (phase == Phase.Failed && AlarmFacts.StoppingOf(standing, _core, _doseEnding) == 0)
            return (int)CoreProperty.FailedHasCause;
        if (_outputs.Pump && before == Phase.Failed && CoreMonitors.Pressed(_core, Button.Reset))
            return (int)CoreProperty.NoStartByReset;
        return phase == Phase.OutputTest || FollowsState(phase, standing, holding, failure) ? -1 : (int)CoreProperty.OutputsFollow;
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

    /// <param name="leastMs">How long power must have lasted for something to be promised: of a save that is torn nothing is left.</param>
    private int Cut(int leastMs)
    {
        bool tooSoon = _poweredMs < leastMs;
        int standing = _saves.SavedStanding;
        _core.RestoreState(_saved, StateUse.Step);
        PowerUp();
        _monitors.Cut(tooSoon);
        if ((standing & ~_core.Alarms.Standing) != 0)
            return (int)CoreProperty.AlarmSurvivesCut;
        return _outputs.Pump ? (int)CoreProperty.NoStartByReset : IExploredModel.Holds;
    }

    private void PowerUp()
    {
        _core.PowerUp();
        _fresh = true;
        _poweredMs = 0;
        Save();
        _saves.Begin(_core);
    }

    /// <summary>With everything quiet for a while, a button leads out of the phase.</summary>
    private bool Leaves(Button button, int quietSteps)
    {
        Phase phase = _core.Phase;
        for (int step = 0; step < quietSteps; step++)
            Scan(_setup.Alphabet.Quiet);
        for (int step = 0; step < 2; step++)
        {
            if (_core.Phase != phase)
                return true;
            _inputs.CopyFrom(_setup.Alphabet.Quiet);
            Alphabet.Hold(_inputs, button);
            _nowMs += (uint)Math.Max(_setup.StepMs, _setup.Settings[SettingField.ButtonDebounceMs]);
            _core.Scan(_nowMs);
        }

        return _core.Phase != phase;
    }
}
