using System;
using System.IO.Hashing;
using System.Linq;
using System.Runtime.InteropServices;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What was saved of the core last. What is saved, and when, is decided as in the main loop; where power is never cut nothing is kept.</summary>
internal sealed class SavedState
{
    /// <summary>Numbers of the state that <see cref="CopyTo"/> writes.</summary>
    public const int NumberCount = SavePolicy.NumberCount + 1;

    private const int PrintLength = 16;

    private readonly Controller _core;
    private readonly SavePolicy _policy;
    private readonly byte[] _saved;
    private readonly byte[] _compared;
    private readonly int _intervalMs;
    private UInt128 _print;
    private int _poweredMs;

    public SavedState(CoreSetup setup, Controller core)
    {
        _core = core;
        _saved = new byte[core.StateLength];
        _compared = new byte[core.StateLength];
        _intervalMs = setup.Settings[SettingField.SaveIntervalMs];
        _policy = new SavePolicy(_intervalMs);
        IsKept = setup.Alphabet.Letters.Any(letter => letter.Cut != PowerCut.None);
    }

    /// <summary>Whether power can be cut, so that what was saved matters.</summary>
    public bool IsKept { get; }

    /// <summary>Alarms that stood when it was saved.</summary>
    public int Standing => _policy.SavedStanding;

    /// <summary>Whether a save is due.</summary>
    public bool IsDue => _policy.IsDue(_core);

    /// <summary>Bytes that <see cref="Write"/> writes.</summary>
    public int Length => IsKept ? _saved.Length + PrintLength : 0;

    public void Pass(int elapsedMs)
    {
        if (!IsKept)
            return;
        _policy.Advance(elapsedMs);
        _poweredMs = Math.Min(_poweredMs + elapsedMs, 2 * _intervalMs);
    }

    /// <summary>Of a save that is torn nothing is left, so power must have lasted for two intervals for something to be promised.</summary>
    public bool IsTooSoonFor(PowerCut cut) => _poweredMs < (cut == PowerCut.CutInSave ? 2 * _intervalMs : _intervalMs);

    public void Save()
    {
        _policy.Saved(_core);
        _core.SaveState(_saved, StateUse.Step);
        int length = _core.SaveState(_compared, StateUse.Compare);
        _print = XxHash128.HashToUInt128(_compared.AsSpan(0, length));
    }

    /// <summary>Puts the core back to it.</summary>
    public void Restore() => _core.RestoreState(_saved, StateUse.Step);

    /// <summary>Power came: what the core begins with is saved.</summary>
    public void PowerUp()
    {
        _poweredMs = 0;
        Save();
        _policy.Begin(_core);
    }

    public void Write(Span<byte> to)
    {
        if (!IsKept)
            return;
        _saved.CopyTo(to);
        MemoryMarshal.Write(to[_saved.Length..], _print);
    }

    public void Read(ReadOnlySpan<byte> from)
    {
        if (!IsKept)
            return;
        from[.._saved.Length].CopyTo(_saved);
        _print = MemoryMarshal.Read<UInt128>(from[_saved.Length..]);
    }

    /// <summary>Writes what tells it from another.</summary>
    /// <returns>Bytes written.</returns>
    public int Compare(Span<byte> buffer)
    {
        if (!IsKept)
            return 0;
        MemoryMarshal.Write(buffer, _print);
        return PrintLength;
    }

    public void CopyTo(int[] numbers)
    {
        _policy.CopyTo(numbers);
        numbers[SavePolicy.NumberCount] = _poweredMs;
    }

    public void CopyFrom(int[] numbers)
    {
        _policy.CopyFrom(numbers);
        _poweredMs = numbers[SavePolicy.NumberCount];
    }
}
