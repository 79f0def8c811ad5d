using LubeController.Core;

namespace LubeController.Board;

/// <summary>Keeps the core's state, and the time powered so far, over a power cut.</summary>
public sealed class StateMemory
{
    private const int Version = 1;
    private const int UptimeLength = 8;

    private readonly BlockRing _ring;
    private readonly byte[] _state;
    private readonly Uptime _uptime;

    /// <summary>Makes a memory over some blocks of a storage, and reads them.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="first">The first block.</param>
    /// <param name="count">How many, 2 or more.</param>
    /// <param name="stateLength">Bytes of the core's state; 0 where it cannot be kept.</param>
    /// <param name="uptime">The time powered, saved with the state.</param>
    public StateMemory(IBlockStorage storage, int first, int count, int stateLength, Uptime uptime)
    {
        _state = new byte[stateLength];
        _uptime = uptime;
        _ring = new BlockRing(storage, BlockKind.State, Version, first, count, UptimeLength + stateLength, false);
        _ring.Load();
    }

    /// <summary>The blocks.</summary>
    public BlockRing Ring => _ring;

    /// <summary>Restores the newest whole state that the core takes.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Load(Controller core)
    {
        int block = _ring.Newest;
        while (block >= 0)
        {
            if (_ring.LoadBlock(block))
            {
                _uptime.RaiseTo((int)ByteOrder.Get(_ring.Frame, BlockRing.HeaderLength), (int)ByteOrder.Get(_ring.Frame, BlockRing.HeaderLength + 4));
                for (int index = 0; index < _state.Length; index++)
                    _state[index] = _ring.Frame[BlockRing.HeaderLength + UptimeLength + index];
                if (core.RestoreState(_state))
                {
                    _ring.SetNewest(block);
                    return true;
                }
            }

            block = _ring.OlderThan(block);
        }

        return false;
    }

    /// <summary>Saves the state.</summary>
    /// <returns>Whether it stands now.</returns>
    public bool Save(Controller core)
    {
        if (_state.Length == 0 || core.SaveState(_state) != _state.Length)
            return false;
        ByteOrder.Put(_ring.Frame, BlockRing.HeaderLength, (uint)_uptime.Seconds);
        ByteOrder.Put(_ring.Frame, BlockRing.HeaderLength + 4, (uint)_uptime.Milliseconds);
        for (int index = 0; index < _state.Length; index++)
            _ring.Frame[BlockRing.HeaderLength + UptimeLength + index] = _state[index];
        return _ring.Write(UptimeLength + _state.Length);
    }
}
