namespace LubeController.Core;

/// <summary>
/// One door for state in both directions: a part hands each field through and keeps what comes back, so that what is
/// written and what is read cannot differ. Little endian, four bytes for a number, one for a flag.
/// </summary>
public sealed class StateStream
{
    private byte[] _buffer = new byte[0];
    private int _position;
    private bool _writing;

    /// <summary>Bytes handed through since the stream was opened.</summary>
    public int Position => _position;

    /// <summary>Whether the buffer was long enough so far; further fields pass through unchanged once it was not.</summary>
    public bool Fits { get; private set; }

    /// <summary>Opens a buffer from its start.</summary>
    public void Open(byte[] buffer, bool writing)
    {
        _buffer = buffer;
        _position = 0;
        _writing = writing;
        Fits = true;
    }

    /// <summary>Writes or reads a number.</summary>
    public int Number(int value)
    {
        if (!Take(4))
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
        if (!Take(1))
            return value;
        if (_writing)
        {
            _buffer[_position - 1] = value ? (byte)1 : (byte)0;
            return value;
        }

        return _buffer[_position - 1] != 0;
    }

    private bool Take(int bytes)
    {
        if (_position > _buffer.Length - bytes)
            Fits = false;
        if (!Fits)
            return false;
        _position += bytes;
        return true;
    }
}
