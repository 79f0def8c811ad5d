using System;
using LubeController.Analysis.Exploration;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>
/// A machine whose states can be counted by hand: two counters, each of which a letter moves on by one, up to a size; a third
/// letter goes back to the start. One pair may be forbidden, one may fail its probe.
/// </summary>
internal sealed class RingModel(int size, (int, int)? forbidden, (int, int)? failsProbe) : IExploredModel
{
    private int _first;
    private int _second;

    public int StateLength => 8;

    public int CompareLength => 8;

    public int Letters => 3;

    public void WriteFirst(Span<byte> state)
    {
        (_first, _second) = (0, 0);
        Write(state);
    }

    public int Move(ReadOnlySpan<byte> state, int letter)
    {
        _first = BitConverter.ToInt32(state);
        _second = BitConverter.ToInt32(state[4..]);
        switch (letter)
        {
            case 0 when _first < size - 1: _first++; break;
            case 1 when _second < size - 1: _second++; break;
            case 2: (_first, _second) = (0, 0); break;
            default: return IExploredModel.NoSuchMove;
        }

        return forbidden == (_first, _second) ? 0 : IExploredModel.Holds;
    }

    public int Compare(Span<byte> buffer)
    {
        Write(buffer);
        return 8;
    }

    public void Write(Span<byte> state)
    {
        BitConverter.TryWriteBytes(state, _first);
        BitConverter.TryWriteBytes(state[4..], _second);
    }

    public int Probe() => failsProbe == (_first, _second) ? 1 : IExploredModel.Holds;
}
