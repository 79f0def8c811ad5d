namespace LubeController.Core;

/// <content>The one door through which the whole state is saved and restored.</content>
public sealed partial class Controller
{
    /// <summary>Writes the whole state.</summary>
    /// <param name="buffer">At least <see cref="StateLength"/> bytes.</param>
    /// <returns>Bytes written, or 0 where the buffer is too short or a rule hands through another length than at first.</returns>
    public int SaveState(byte[] buffer) => SaveState(buffer, StateUse.Keep);

    /// <summary>Writes the state for one of several uses.</summary>
    /// <param name="buffer">At least <see cref="StateLength"/> bytes.</param>
    /// <param name="use">What it is for.</param>
    /// <returns>Bytes written, for <see cref="StateUse.Compare"/> as many as the state takes then; 0 as above.</returns>
    public int SaveState(byte[] buffer, StateUse use)
    {
        PassQuietTime();
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
        if (StateLength != NotMeasured && length != StateLength)
            return 0;
        if (use == StateUse.Keep)
            _stream.Seal(HeaderLength, length);
        return length;
    }

    /// <summary>Reads a state that <see cref="SaveState(byte[])"/> wrote, and goes on exactly from there. After a power cut, call <see cref="PowerUp"/> next.</summary>
    /// <returns>False, with nothing changed, where the buffer holds no whole state of this core and rule.</returns>
    public bool RestoreState(byte[] buffer) => RestoreState(buffer, StateUse.Keep);

    /// <summary>Reads a state that was written for the same use. One for <see cref="StateUse.Step"/> goes on with the millisecond clock at 0.</summary>
    /// <returns>False, with nothing changed, as above, and for <see cref="StateUse.Compare"/>.</returns>
    public bool RestoreState(byte[] buffer, StateUse use)
    {
        if (StateLength == 0 || buffer.Length < StateLength || use == StateUse.Compare)
            return false;
        _stream.Open(buffer, false);
        bool ours = _stream.Number(0) == StateMark && _stream.Number(0) == StateLength;
        if (!ours || (use == StateUse.Keep && !_stream.SealHolds(HeaderLength, StateLength)))
            return false;
        _stream.Open(buffer, false);
        Transfer();
        _quietMs = 0;
        _quietPulses = 0;
        _clockKnown = use == StateUse.Step;
        _lastMs = 0;
        _deadlineMs = 0;
        _restored = true;
        return true;
    }

    /// <summary>Beyond it the time spent in the present phase changes nothing.</summary>
    private int LastPhaseLimitMs
    {
        get
        {
            switch (Phase)
            {
                case Phase.Rest: return _settings[SettingField.RestartDelayMs];
                case Phase.Failed: return _settings[SettingField.NewTryDelayMs];
                case Phase.RetryPause: return _settings[SettingField.RetryPauseMs];
                case Phase.Prime: return _settings[SettingField.PrimeLimitMs];
                case Phase.OutputTest: return _settings[SettingField.OutputTestMs];
                default: return 0;
            }
        }
    }

    private void Transfer()
    {
        _stream.Counter(StateMark);
        _stream.Counter(StateLength);
        _stream.Counter(0);
        Phase = (Phase)_stream.Number((int)Phase);
        _primeFrom = (Phase)_stream.NumberIf(Phase == Phase.Prime, (int)_primeFrom);
        _trying = _stream.Flag(_trying);
        _afterFailure = _stream.Flag(_afterFailure);
        _readyMs = _stream.Number(_readyMs);
        _phaseMs = _stream.UpTo(_phaseMs, LastPhaseLimitMs);
        _pumpOffMs = _stream.UpTo(_pumpOffMs, Saturating.Add(_settings[SettingField.RunOnMs], 1));
        _overdueMs = _stream.UpTo(_overdueMs, _settings[SettingField.OverdueMs]);
        _lampMs = _stream.Number(_lampMs);
        DosesCompleted = _stream.Counter(DosesCompleted);
        PressesRefused = _stream.Counter(PressesRefused);
        _held.Transfer(_stream, _hasRule && _settings.RestMode == RestMode.Rule);
        _outputs.Transfer(_stream);
        Alarms.Transfer(_stream);
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Transfer(_stream);
        int levels = _settings[SettingField.LevelDebounceMs];
        _low.Transfer(_stream, levels);
        _empty.Transfer(_stream, levels);
        int buttons = _settings[SettingField.ButtonDebounceMs];
        _startButton.Transfer(_stream, buttons);
        _acknowledgeButton.Transfer(_stream, buttons);
        _resetButton.Transfer(_stream, buttons);
        _doseNowButton.Transfer(_stream, buttons);
        _primeButton.Transfer(_stream, buttons);
        _testButton.Transfer(_stream, buttons);
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
