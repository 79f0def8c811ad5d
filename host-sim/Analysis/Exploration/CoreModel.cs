using System;
using System.Numerics;
using System.Runtime.InteropServices;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// The deployed core as a machine to explore. A state is the core's own state, what was saved of it last, and the clocks that
/// watch it; a step is one scan, after which the power may be cut.
/// </summary>
public sealed class CoreModel : IExploredModel
{
    private const int Numbers = SavedState.NumberCount + 2;
    private const int JustPoweredUpAt = SavedState.NumberCount;
    private const int RefusedAt = JustPoweredUpAt + 1;

    private readonly CoreSetup _setup;
    private readonly ExploredCore _explored;
    private readonly SavedState _saved;
    private readonly ScanCheck _scanCheck;
    private readonly CutCheck _cutCheck;
    private readonly ButtonProbe _probe;
    private readonly byte[] _state;
    private readonly byte[] _compared;
    private readonly int[] _numbers;

    /// <summary>Makes the machine.</summary>
    public CoreModel(CoreSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        _setup = setup;
        _explored = new ExploredCore(setup);
        Monitors = new CoreMonitors(setup);
        _saved = new SavedState(setup, Core);
        _scanCheck = new ScanCheck(_explored);
        _cutCheck = new CutCheck(_explored, Monitors);
        _probe = new ButtonProbe(_explored);
        _state = new byte[Core.StateLength];
        _compared = new byte[Core.StateLength];
        _numbers = new int[Numbers + Monitors.Count];
    }

    /// <summary>What this machine came by.</summary>
    public CoreCoverage Coverage { get; } = new();

    /// <inheritdoc/>
    public int StateLength => _state.Length + _saved.Length + (4 * _numbers.Length);

    /// <inheritdoc/>
    public int CompareLength => _compared.Length + 16 + (4 * _numbers.Length);

    /// <inheritdoc/>
    public int Letters => _setup.Alphabet.Letters.Count;

    /// <summary>Steps for which a probe leaves everything quiet before it presses a button.</summary>
    public int QuietSteps => _probe.QuietSteps;

    internal Controller Core => _explored.Core;

    internal Outputs Outputs => _explored.Outputs;

    internal CoreMonitors Monitors { get; }

    internal int SavedStanding => _saved.Standing;

    /// <inheritdoc/>
    public void WriteFirst(Span<byte> state)
    {
        Monitors.Begin();
        PowerUp(PowerCut.None);
        Write(state);
    }

    /// <inheritdoc/>
    public int Move(ReadOnlySpan<byte> state, int letter)
    {
        Letter taken = _setup.Alphabet.Letters[letter];
        Load(state);
        Phase before = Core.Phase;
        bool pumpBefore = Outputs.Pump;
        int standingBefore = Core.Alarms.Standing;
        bool heldBefore = AlarmFacts.HoldingOf(standingBefore) != 0;
        _saved.Pass(_explored.Scan(taken.Inputs));
        Coverage.Note(before, Core);
        int violated = _scanCheck.Violated(before, standingBefore) | Monitors.Scan(Core, _explored.Inputs, before, pumpBefore, heldBefore);
        if ((violated != 0 && !_setup.GoesOn) || !_saved.IsKept)
            return Report(violated);
        bool due = _saved.IsDue;
        if (taken.Cut == PowerCut.CutInSave && !due)
            return IExploredModel.NoSuchMove;
        if (due && taken.Cut != PowerCut.CutInSave)
            _saved.Save();
        if (taken.Cut != PowerCut.None)
            violated |= Cut(taken.Cut);
        return Report(violated);
    }

    /// <inheritdoc/>
    public int Compare(Span<byte> buffer)
    {
        int length = Core.SaveState(_compared, StateUse.Compare);
        _compared.AsSpan(0, length).CopyTo(buffer);
        length += _saved.Compare(buffer[length..]);
        PutNumbers();
        MemoryMarshal.AsBytes(_numbers.AsSpan()).CopyTo(buffer[length..]);
        return length + (4 * _numbers.Length);
    }

    /// <inheritdoc/>
    public void Write(Span<byte> state)
    {
        Core.SaveState(_state, StateUse.Step);
        _state.CopyTo(state);
        _saved.Write(state[_state.Length..]);
        PutNumbers();
        MemoryMarshal.AsBytes(_numbers.AsSpan()).CopyTo(state[(_state.Length + _saved.Length)..]);
    }

    /// <inheritdoc/>
    public int Probe()
    {
        return Report(_probe.Violated());
    }

    /// <summary>What a search hears of properties that are violated: the first, or none where it goes on.</summary>
    private int Report(int violated)
    {
        if (violated == 0)
            return IExploredModel.Holds;
        Coverage.Violated |= violated;
        return _setup.GoesOn ? IExploredModel.Holds : BitOperations.TrailingZeroCount(violated);
    }

    private void Load(ReadOnlySpan<byte> state)
    {
        state[.._state.Length].CopyTo(_state);
        _saved.Read(state[_state.Length..]);
        MemoryMarshal.Cast<byte, int>(state[(_state.Length + _saved.Length)..]).CopyTo(_numbers);
        _saved.CopyFrom(_numbers);
        _explored.JustPoweredUp = _numbers[JustPoweredUpAt] != 0;
        _explored.UseSettings(_numbers[RefusedAt] != 0);
        Monitors.Read(_numbers.AsSpan(Numbers));
        Core.RestoreState(_state, StateUse.Step);
        _explored.NowMs = 0;
    }

    private void PutNumbers()
    {
        _saved.CopyTo(_numbers);
        _numbers[JustPoweredUpAt] = _explored.JustPoweredUp ? 1 : 0;
        _numbers[RefusedAt] = _explored.SettingsAreRefused ? 1 : 0;
        Monitors.Write(_numbers.AsSpan(Numbers));
    }

    /// <summary>Power is cut and comes back: what was saved last is restored. What is violated by that, one bit each.</summary>
    private int Cut(PowerCut cut)
    {
        bool tooSoon = _saved.IsTooSoonFor(cut);
        int standing = _saved.Standing;
        _saved.Restore();
        _explored.UseSettings(cut == PowerCut.SettingsLost);
        PowerUp(cut);
        Monitors.Cut(tooSoon);
        return _cutCheck.Violated(cut, standing);
    }

    private void PowerUp(PowerCut cut)
    {
        _explored.PowerUp(cut);
        _saved.PowerUp();
    }
}
