namespace LubeController.Core;

/// <content>The one door through which the whole state is saved and restored.</content>
public sealed partial class Controller
{
    /// <summary>Writes the whole state.</summary>
    /// <param name="buffer">At least <see cref="StateLength"/> bytes.</param>
    /// <returns>Bytes written, or 0 where the buffer is too short or a rule hands through another length than at first.</returns>
    public int SaveState(byte[] buffer)
    {
        PassQuietTime();
        _stream.Open(buffer, true);
        Transfer();
        int length = _stream.Position;
        if (!_stream.Fits || (StateLength != NotMeasured && length != StateLength))
            return 0;
        _stream.Seal(HeaderLength, length);
        return length;
    }

    /// <summary>Reads a state that <see cref="SaveState"/> wrote, and goes on exactly from there. After a power cut, call <see cref="PowerUp"/> next.</summary>
    /// <returns>False, with nothing changed, where the buffer holds no whole state of this core and rule.</returns>
    public bool RestoreState(byte[] buffer)
    {
        if (StateLength == 0 || buffer.Length < StateLength)
            return false;
        _stream.Open(buffer, false);
        bool ours = _stream.Number(0) == StateMark && _stream.Number(0) == StateLength;
        if (!ours || !_stream.SealHolds(HeaderLength, StateLength))
            return false;
        _stream.Open(buffer, false);
        Transfer();
        _quietMs = 0;
        _quietPulses = 0;
        _clockKnown = false;
        _deadlineMs = 0;
        _restored = true;
        return true;
    }

    private void Transfer()
    {
        _stream.Number(StateMark);
        _stream.Number(StateLength);
        _stream.Number(0);
        Phase = (Phase)_stream.Number((int)Phase);
        _primeFrom = (Phase)_stream.Number((int)_primeFrom);
        _trying = _stream.Flag(_trying);
        _afterFailure = _stream.Flag(_afterFailure);
        _readyMs = _stream.Number(_readyMs);
        _phaseMs = _stream.Number(_phaseMs);
        _pumpOffMs = _stream.Number(_pumpOffMs);
        _overdueMs = _stream.Number(_overdueMs);
        _lampMs = _stream.Number(_lampMs);
        DosesCompleted = _stream.Number(DosesCompleted);
        PressesRefused = _stream.Number(PressesRefused);
        _held.Transfer(_stream);
        _outputs.Transfer(_stream);
        Alarms.Transfer(_stream);
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Transfer(_stream);
        _low.Transfer(_stream);
        _empty.Transfer(_stream);
        _startButton.Transfer(_stream);
        _acknowledgeButton.Transfer(_stream);
        _resetButton.Transfer(_stream);
        _doseNowButton.Transfer(_stream);
        _primeButton.Transfer(_stream);
        _testButton.Transfer(_stream);
        _pressure.Transfer(_stream);
        _shaft.Transfer(_stream);
        _dose.Transfer(_stream);
        _line.Transfer(_stream);
        _pump.Transfer(_stream);
        _compare.Transfer(_stream);
        _restarts.Transfer(_stream);
        _supply.Transfer(_stream);
        _warmth.Transfer(_stream);
        _shaftWasContradicted = _stream.Flag(_shaftWasContradicted);
        _pumpHeld = _stream.Flag(_pumpHeld);
        _rest.Transfer(_stream);
    }
}
