namespace LubeController.Core;

/// <summary>
/// One door for state in both directions: a part hands each field through and keeps what comes back, so that what is
/// written and what is read cannot differ. Little endian, four bytes for a number, one for a flag.
/// </summary>
/// <remarks>
/// A third direction writes what can still change an output and nothing else, so that two states can be compared by what they
/// will do: counters are left out, a time beyond the last limit it is held to counts as that limit, what does not matter in
/// the present situation counts as zero. Each field says so where it is handed through.
/// </remarks>
public sealed class StateStream
{
    private byte[] _buffer = new byte[0];
    private int _position;
    private bool _writing;
    private bool _comparing;
    private bool _fits;

    /// <summary>Bytes handed through since the stream was opened.</summary>
    public int Position => _position;

    /// <summary>Whether the buffer was long enough so far; further fields pass through unchanged once it was not.</summary>
    public bool Fits => _fits;

    /// <summary>Whether the stream takes what can still change an output, and nothing else.</summary>
    public bool IsComparing => _comparing;

    /// <summary>Opens a buffer from its start.</summary>
    public void Open(byte[] buffer, bool writing)
    {
        _buffer = buffer;
        _position = 0;
        _writing = writing;
        _comparing = false;
        _fits = true;
    }

    /// <summary>Opens a buffer that takes what can still change an output.</summary>
    public void OpenToCompare(byte[] buffer)
    {
        Open(buffer, true);
        _comparing = true;
    }

    /// <summary>A number that changes no output, such as a count of what has been.</summary>
    public int Counter(int value) => _comparing ? value : Number(value);

    /// <summary>A time or count that is held to limits, the last of which is <paramref name="most"/>.</summary>
    public int UpTo(int value, int most)
    {
        if (!_comparing)
            return Number(value);
        Number(value < most ? value : most);
        return value;
    }

    /// <summary>A number that matters only in some situations.</summary>
    public int NumberIf(bool matters, int value)
    {
        if (!_comparing)
            return Number(value);
        Number(matters ? value : 0);
        return value;
    }

    /// <summary>A flag that matters only in some situations.</summary>
    public bool FlagIf(bool matters, bool value)
    {
        if (!_comparing)
            return Flag(value);
        Flag(matters && value);
        return value;
    }

    /// <summary>Writes or reads a number.</summary>
    public int Number(int value)
    {
        if (!Claim(4))
            return value;
        int at = _position - 4;
        if (_writing)
        {
            _buffer[at] = (byte)value;
            _buffer[at + 1] = (byte)(value >> 8);
            _buffer[at + 2] = (byte)(value >> 16);
            _buffer[at + 3] = (byte)(value >> 24);
            return value;
        }

        return _buffer[at] | (_buffer[at + 1] << 8) | (_buffer[at + 2] << 16) | (_buffer[at + 3] << 24);
    }

    /// <summary>Writes or reads a flag.</summary>
    public bool Flag(bool value)
    {
        if (!Claim(1))
            return value;
        if (_writing)
        {
            _buffer[_position - 1] = value ? (byte)1 : (byte)0;
            return value;
        }

        return _buffer[_position - 1] != 0;
    }

    /// <summary>Writes or reads one bit of a number as a flag.</summary>
    /// <returns>The number with that bit.</returns>
    internal int FlagIn(int bits, int bit) => Flag((bits & bit) != 0) ? bits | bit : bits & ~bit;

    /// <summary>Writes a check value over the bytes from <paramref name="from"/> up to <paramref name="end"/> into the four before them.</summary>
    internal void Seal(int from, int end)
    {
        int check = Check(from, end);
        _position = from - 4;
        Number(check);
    }

    /// <summary>Whether the check value written by <see cref="Seal"/> agrees.</summary>
    internal bool SealHolds(int from, int end)
    {
        _position = from - 4;
        return Number(0) == Check(from, end);
    }

    /// <summary>FNV-1a, 32 bits: quick, and enough to tell a state from other bytes; the storage has its own CRC.</summary>
    private int Check(int from, int end)
    {
        uint check = 2166136261;
        for (int at = from; at < end; at++)
            check = unchecked((check ^ _buffer[at]) * 16777619);
        return (int)check;
    }

    private bool Claim(int bytes)
    {
        if (_position > _buffer.Length - bytes)
            _fits = false;
        if (!_fits)
            return false;
        _position += bytes;
        return true;
    }
}
