namespace LubeController.Board;

/// <summary>
/// Some blocks of one kind, written in turn, so that the newest whole one stands while the next is written. Each block holds
/// mark, kind, version, a check of this header, sequence number, length, CRC-32 and the payload, and after it the sequence
/// number twice, once inverted: bytes are written in order, so these show that the write was finished.
/// </summary>
/// <remarks>
/// A torn write is not corruption: a bad block counts as torn if it comes next after the newest whole one and its end does not
/// show that a newer write was finished. Every other bad block lost its check value after it was whole.
/// </remarks>
public sealed class BlockRing
{
    /// <summary>Bytes before the payload.</summary>
    public const int HeaderLength = 20;

    /// <summary>Bytes after the payload.</summary>
    public const int FinishLength = 8;

    private const uint Mark = 0x4D42434C;
    private const int CheckedHeader = 16;
    private const int None = -1;

    private readonly IBlockStorage _storage;
    private readonly byte[] _frame;
    private readonly BlockKind _kind;
    private readonly int _version;
    private readonly int _first;
    private readonly int _mostPayload;
    private readonly bool _anyVersion;
    private readonly uint[] _sequences;
    private readonly bool[] _whole;
    private readonly bool[] _bad;
    private readonly bool[] _finished;
    private readonly bool[] _corrupt;
    private readonly uint[] _finishes;
    private int _newest = None;
    private uint _last;
    private int _written;
    private int _foreign;
    private int _corruptCount;

    /// <summary>Makes a ring; nothing is read yet.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="kind">What the blocks hold.</param>
    /// <param name="version">Version of the payload, 0 to 255.</param>
    /// <param name="first">The first block.</param>
    /// <param name="count">How many, 2 or more.</param>
    /// <param name="payloadLength">Bytes of the payload; with <paramref name="anyVersion"/> the most.</param>
    /// <param name="anyVersion">Whether a block of another version or length counts as whole; else it counts as none.</param>
    public BlockRing(IBlockStorage storage, BlockKind kind, int version, int first, int count, int payloadLength, bool anyVersion)
    {
        _storage = storage;
        _kind = kind;
        _version = version;
        _first = first;
        _mostPayload = payloadLength;
        _anyVersion = anyVersion;
        _frame = new byte[HeaderLength + payloadLength + FinishLength];
        _sequences = new uint[count];
        _whole = new bool[count];
        _bad = new bool[count];
        _finished = new bool[count];
        _corrupt = new bool[count];
        _finishes = new uint[count];
    }

    /// <summary>The payload stands here from <see cref="HeaderLength"/> on, after a load and before a write.</summary>
    public byte[] Frame => _frame;

    /// <summary>Blocks of the ring.</summary>
    public int Count => _sequences.Length;

    /// <summary>Whether a block is whole.</summary>
    public bool AnyWhole => _newest != None;

    /// <summary>The block, from 0 in the ring, that holds the newest whole payload; -1 where there is none.</summary>
    public int Newest => _newest;

    /// <summary>Blocks found at <see cref="Load"/> that lost their check value after they were whole.</summary>
    public int Corrupt => _corruptCount;

    /// <summary>Blocks found at <see cref="Load"/> that hold something, whole or not.</summary>
    public int Written => _written;

    /// <summary>Blocks found at <see cref="Load"/> that are of another kind, version or length.</summary>
    public int Foreign => _foreign;

    /// <summary>Version of the payload that was loaded last.</summary>
    public int LoadedVersion => _frame[5];

    /// <summary>Bytes of the payload that was loaded last.</summary>
    public int LoadedLength => (int)ByteOrder.Get(_frame, 12);

    /// <summary>Whether a payload of this length fits into a block of the storage.</summary>
    public bool Fits => _frame.Length <= _storage.BlockLength;

    /// <summary>Whether a block of the ring, from 0, was found at <see cref="Load"/> to have lost its check value after it was whole.</summary>
    public bool IsCorrupt(int block) => _corrupt[block];

    /// <summary>Whether a block of the ring, from 0, is whole.</summary>
    public bool IsWhole(int block) => _whole[block];

    /// <summary>Sequence number of a whole block.</summary>
    public uint SequenceOf(int block) => _sequences[block];

    /// <summary>Reads and classifies every block.</summary>
    public void Load()
    {
        _corruptCount = 0;
        _written = 0;
        _foreign = 0;
        _newest = None;
        _last = 0;
        for (int block = 0; block < Count; block++)
        {
            Classify(block);
            if (_whole[block] && (_newest == None || IsNewer(_sequences[block], _last)))
            {
                _newest = block;
                _last = _sequences[block];
            }
        }

        CountCorrupt();
    }

    /// <summary>Reads the newest whole payload into <see cref="Frame"/>.</summary>
    /// <returns>Whether there is one.</returns>
    public bool LoadNewest() => _newest != None && LoadBlock(_newest);

    /// <summary>Reads one block's payload and classifies the block again, since it may read differently a second time.</summary>
    /// <param name="block">From 0 in the ring.</param>
    /// <returns>Whether it is whole.</returns>
    public bool LoadBlock(int block)
    {
        uint sequence = _sequences[block];
        if (!_whole[block])
            return false;
        Classify(block);
        return _whole[block] && _sequences[block] == sequence;
    }

    /// <summary>The whole block next older than another, or -1.</summary>
    public int OlderThan(int block)
    {
        int found = None;
        for (int index = 0; index < Count; index++)
        {
            if (index != block && _whole[index] && IsNewer(_sequences[block], _sequences[index]) && (found == None || IsNewer(_sequences[index], _sequences[found])))
                found = index;
        }

        return found;
    }

    /// <summary>Treats a block as the newest whole one: its payload was accepted, and newer ones were refused.</summary>
    public void SetNewest(int block) => _newest = block;

    /// <summary>Writes the payload in <see cref="Frame"/> into the block after the newest. Where that one fails the following are tried; the newest is left alone.</summary>
    /// <param name="payloadLength">Bytes of it.</param>
    /// <returns>Whether it was written.</returns>
    public bool Write(int payloadLength)
    {
        if (!Fits)
            return false;
        int block = _newest;
        for (int tries = 0; tries < Count; tries++)
        {
            block = block + 1 >= Count ? 0 : block + 1;
            if (block == _newest)
                break;
            _last = unchecked(_last + 1);
            Seal(payloadLength);
            _whole[block] = false;
            if (_storage.Write(_first + block, _frame, HeaderLength + payloadLength + FinishLength))
            {
                _whole[block] = true;
                _sequences[block] = _last;
                _newest = block;
                return true;
            }
        }

        return false;
    }

    private static bool IsNewer(uint one, uint other) => unchecked((int)(one - other)) > 0;

    private void Seal(int payloadLength)
    {
        ByteOrder.Put(_frame, 0, Mark);
        _frame[4] = (byte)_kind;
        _frame[5] = (byte)_version;
        ByteOrder.Put(_frame, 8, _last);
        ByteOrder.Put(_frame, 12, (uint)payloadLength);
        int check = HeaderCheck();
        _frame[6] = (byte)check;
        _frame[7] = (byte)(check >> 8);
        ByteOrder.Put(_frame, 16, Check(payloadLength));
        ByteOrder.Put(_frame, HeaderLength + payloadLength, _last);
        ByteOrder.Put(_frame, HeaderLength + payloadLength + 4, ~_last);
    }

    /// <summary>Sixteen bits over kind, version, sequence number and length, so that the length can be trusted before the payload is read.</summary>
    private int HeaderCheck() => (int)(Crc32.ComputeTwo(_frame, 4, 2, 8, 8) & 0xFFFF);

    private uint Check(int payloadLength) => Crc32.ComputeTwo(_frame, 0, CheckedHeader, HeaderLength, payloadLength);

    private void Classify(int block)
    {
        _whole[block] = false;
        _bad[block] = false;
        _finished[block] = false;
        if (!_storage.Read(_first + block, _frame))
        {
            _bad[block] = true;
            return;
        }

        if (ByteOrder.AreErased(_frame, 0, HeaderLength))
            return;
        _written++;
        bool headed = ByteOrder.Get(_frame, 0) == Mark && HeaderCheck() == (_frame[6] | (_frame[7] << 8));
        uint length = ByteOrder.Get(_frame, 12);
        bool ours = headed && _frame[4] == (byte)_kind && (_anyVersion ? length <= (uint)_mostPayload : length == (uint)_mostPayload && _frame[5] == (byte)_version);
        if (headed && !ours)
        {
            _foreign++;
            return;
        }

        if (ours && ByteOrder.Get(_frame, 16) == Check((int)length))
        {
            _whole[block] = true;
            _sequences[block] = ByteOrder.Get(_frame, 8);
            return;
        }

        _bad[block] = true;
        int end = HeaderLength + (ours ? (int)length : _mostPayload);
        _finishes[block] = ByteOrder.Get(_frame, end);
        _finished[block] = _finishes[block] == ~ByteOrder.Get(_frame, end + 4);
    }

    private void CountCorrupt()
    {
        int next = _newest + 1 >= Count ? 0 : _newest + 1;
        for (int block = 0; block < Count; block++)
        {
            _corrupt[block] = false;
            if (!_bad[block])
                continue;
            bool newer = _finished[block] && (_newest == None || IsNewer(_finishes[block], _sequences[_newest]));
            _corrupt[block] = newer || block != next;
            if (_corrupt[block])
                _corruptCount++;

            // So that a torn rewrite of this block cannot be taken for it.
            if (newer && IsNewer(_finishes[block], _last))
                _last = _finishes[block];
        }
    }
}
