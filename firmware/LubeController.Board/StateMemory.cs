using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// Keeps the core's state over a power cut: two blocks in turn, each with a sequence number and a CRC-32, so that a cut
/// in the middle of a write leaves the older one whole.
/// </summary>
public sealed class StateMemory
{
    private const int HeaderLength = 12;

    private readonly IBlockStorage _storage;
    private readonly byte[] _block;
    private readonly byte[] _state;
    private uint _sequence;

    /// <summary>Makes a memory over two blocks of a storage.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="stateLength">Bytes of the core's state.</param>
    public StateMemory(IBlockStorage storage, int stateLength)
    {
        _storage = storage;
        _state = new byte[stateLength];
        _block = new byte[storage.BlockLength > HeaderLength + stateLength ? storage.BlockLength : HeaderLength + stateLength];
    }

    /// <summary>Writes that did not succeed, saturating.</summary>
    public int FailedWrites { get; private set; }

    /// <summary>Restores the newest whole state.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Load(Controller core)
    {
        uint first = SequenceOf(0);
        uint second = SequenceOf(1);
        if (first == 0 && second == 0)
            return false;
        int newest = first == 0 || (second != 0 && unchecked((int)(second - first)) > 0) ? 1 : 0;
        return Restore(core, newest, newest == 1 ? second : first)
            || Restore(core, 1 - newest, newest == 1 ? first : second);
    }

    /// <summary>Saves the state in the block that holds the older one.</summary>
    public void Save(Controller core)
    {
        if (_state.Length == 0 || core.SaveState(_state) != _state.Length)
        {
            FailedWrites = Saturating.Add(FailedWrites, 1);
            return;
        }

        // Zero means "none"; two keeps to the turn of the blocks.
        _sequence = unchecked(_sequence + 1);
        if (_sequence == 0)
            _sequence = 2;
        Put(0, _sequence);
        Put(4, (uint)_state.Length);
        for (int index = 0; index < _state.Length; index++)
            _block[HeaderLength + index] = _state[index];
        Put(8, Check());
        if (!_storage.Write((int)(_sequence & 1), _block, HeaderLength + _state.Length))
            FailedWrites = Saturating.Add(FailedWrites, 1);
    }

    /// <summary>Restores one block, read again and judged again, since it may read differently a second time.</summary>
    private bool Restore(Controller core, int block, uint sequence)
    {
        if (sequence == 0 || SequenceOf(block) != sequence)
            return false;
        for (int index = 0; index < _state.Length; index++)
            _state[index] = _block[HeaderLength + index];
        if (!core.RestoreState(_state))
            return false;
        _sequence = sequence;
        return true;
    }

    /// <summary>The check value covers sequence, length and state; the field it stands in counts as zero.</summary>
    private uint Check()
    {
        Put(8, 0);
        return Crc32.Of(_block, 0, HeaderLength + _state.Length);
    }

    /// <summary>Reads a block; 0 where it holds no whole state of this length.</summary>
    private uint SequenceOf(int block)
    {
        if (!_storage.Read(block, _block) || Get(4) != (uint)_state.Length)
            return 0;
        uint sequence = Get(0);
        uint check = Get(8);
        return Check() == check ? sequence : 0;
    }

    private void Put(int at, uint value)
    {
        _block[at] = (byte)value;
        _block[at + 1] = (byte)(value >> 8);
        _block[at + 2] = (byte)(value >> 16);
        _block[at + 3] = (byte)(value >> 24);
    }

    private uint Get(int at) =>
        (uint)(_block[at] | (_block[at + 1] << 8) | (_block[at + 2] << 16) | (_block[at + 3] << 24));
}
