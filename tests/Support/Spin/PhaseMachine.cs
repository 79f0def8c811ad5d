using System;
using LubeController.Analysis.Exploration;

namespace LubeController.Tests.Support.Spin;

/// <summary>
/// A small phase machine of a lubrication controller, the same as <c>phase-machine.pml</c>: what the search and spin's verifier
/// are compared on. Eight bytes of state, 24 letters.
/// </summary>
/// <param name="size">How long its times are.</param>
public sealed class PhaseMachine(PhaseMachineSize size) : IExploredModel
{
    private const byte Rest = 0;
    private const byte Dose = 1;
    private const byte Pause = 2;
    private const byte Stopped = 4;
    private const byte Failed = 5;
    private const int Fields = 8;
    private const int ResetPress = 1;
    private const int StartPress = 2;
    private const byte LatchedOnly = 1;
    private const byte Empty = 2;

    private byte _phase;
    private byte _rest;
    private byte _wait;
    private byte _tried;
    private byte _overdue;
    private byte _before;
    private byte _latched;
    private byte _edges;

    /// <inheritdoc/>
    public int StateLength => Fields;

    /// <inheritdoc/>
    public int CompareLength => Fields;

    /// <inheritdoc/>
    public int Letters => 24;

    /// <inheritdoc/>
    public void WriteFirst(Span<byte> state)
    {
        _phase = Rest;
        _rest = size.Rest;
        _wait = _tried = _overdue = _before = _latched = _edges = 0;
        Write(state);
    }

    /// <inheritdoc/>
    public int Move(ReadOnlySpan<byte> state, int letter)
    {
        Read(state);
        bool cycleSwitch = (letter & 1) != 0;
        bool stop = (letter & 2) != 0;
        int press = letter >> 3;
        if (_overdue < size.Overdue)
            _overdue++;
        if (_rest > 0)
            _rest--;
        if ((letter & 4) != 0)
            _latched = Empty;
        else if (press == ResetPress)
            _latched = 0;
        if (stop)
            (_phase, _wait) = (Stopped, 0);
        else
            Go(cycleSwitch, press);
        _before = cycleSwitch ? (byte)1 : (byte)0;
        return _phase == Failed && _latched == 0 ? 0 : IExploredModel.Holds;
    }

    /// <inheritdoc/>
    public int Compare(Span<byte> buffer)
    {
        Write(buffer);
        return Fields;
    }

    /// <inheritdoc/>
    public void Write(Span<byte> state)
    {
        state[7] = _edges;
        state[0] = _phase;
        state[1] = _rest;
        state[2] = _wait;
        state[3] = _tried;
        state[4] = _overdue;
        state[5] = _before;
        state[6] = _latched;
    }

    /// <inheritdoc/>
    public int Probe() => IExploredModel.Holds;

    private void Read(ReadOnlySpan<byte> state)
    {
        _edges = state[7];
        _phase = state[0];
        _rest = state[1];
        _wait = state[2];
        _tried = state[3];
        _overdue = state[4];
        _before = state[5];
        _latched = state[6];
    }

    private void Go(bool cycleSwitch, int press)
    {
        switch (_phase)
        {
            case Rest when _latched == Empty: _phase = Failed; break;
            case Rest when _rest == 0: (_phase, _wait, _tried) = (Dose, 0, 0); break;
            case Dose when _latched == Empty: _phase = Failed; break;
            case Dose when cycleSwitch && _before == 0: Count(); break;
            case Dose when ++_wait == size.Wait: TimeOut(); break;
            case Pause when _latched == Empty: _phase = Failed; break;
            case Pause when ++_wait == size.Wait: (_phase, _wait) = (Dose, 0); break;
            case Stopped when press == StartPress: _phase = _latched != 0 ? Failed : Rest; break;
            case Failed when _latched == 0: (_phase, _wait) = (Rest, 0); break;
            default: break;
        }
    }

    private void Count()
    {
        _wait = 0;
        if (++_edges == size.Doses)
            (_edges, _overdue, _rest, _phase) = (0, 0, size.Rest, Rest);
    }

    private void TimeOut()
    {
        _wait = 0;
        if (_tried != 0)
            (_latched, _phase) = (LatchedOnly, Failed);
        else
            (_tried, _phase) = (1, Pause);
    }
}
