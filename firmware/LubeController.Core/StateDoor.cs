namespace LubeController.Core;

/// <summary>The one door through which the whole state is saved and restored: a header of mark, length and check value, then the fields.</summary>
internal sealed class StateDoor
{
    private const int Mark = 0x4C430104;
    private const int HeaderLength = 12;
    private const int LongestState = 4096;
    private const int NotMeasured = -1;

    private readonly ScanCycle _cycle;
    private readonly StateStream _stream = new StateStream();
    private int _length = NotMeasured;

    public StateDoor(ScanCycle cycle)
    {
        _cycle = cycle;
    }

    /// <summary>Bytes of a saved state; 0 where a rule's state is longer than can be kept.</summary>
    public int Length => _length;

    /// <summary>Finds the length by saving once.</summary>
    public void Measure() => _length = Save(new byte[LongestState], StateUse.Keep);

    /// <summary>Writes the state; see <see cref="Controller.SaveState(byte[], StateUse)"/>.</summary>
    public int Save(byte[] buffer, StateUse use)
    {
        _cycle.PassQuietTime();
        if (use == StateUse.Compare)
            _stream.OpenToCompare(buffer);
        else
            _stream.Open(buffer, true);
        Transfer();
        int length = _stream.Position;
        if (!_stream.Fits)
            return 0;
        if (use == StateUse.Compare)
            return length;
        if (_length != NotMeasured && length != _length)
            return 0;
        if (use == StateUse.Keep)
            _stream.Seal(HeaderLength, length);
        return length;
    }

    /// <summary>Reads the state; see <see cref="Controller.RestoreState(byte[], StateUse)"/>.</summary>
    public bool Restore(byte[] buffer, StateUse use)
    {
        if (_length == 0 || buffer.Length < _length || use == StateUse.Compare)
            return false;
        _stream.Open(buffer, false);
        bool ours = _stream.Number(0) == Mark && _stream.Number(0) == _length;
        if (!ours || (use == StateUse.Keep && !_stream.SealHolds(HeaderLength, _length)))
            return false;
        _stream.Open(buffer, false);
        Transfer();
        _cycle.Span.Clear();
        _cycle.Span.ResetClock(use == StateUse.Step);
        _cycle.Span.EndNow();
        return true;
    }

    private void Transfer()
    {
        _stream.Counter(Mark);
        _stream.Counter(_length);
        _stream.Counter(0);
        _cycle.Transfer(_stream);
    }
}
