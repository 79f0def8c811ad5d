namespace LubeController.Core;

/// <summary>The phase, how long it has lasted, and what the core must know of how it was entered. The table stands in <c>firmware/PHASES.md</c>.</summary>
internal sealed class PhaseMachine
{
    private readonly Settings _settings;
    private readonly ScanEvents _events;
    private readonly AlarmList _alarms;
    private readonly CycleSwitches _switches;
    private readonly PressureDose _line;
    private Phase _phase;
    private Phase _primeFrom;
    private bool _trying;
    private bool _afterFailure;
    private int _elapsedMs;

    public PhaseMachine(Settings settings, ScanEvents events, AlarmList alarms, CycleSwitches switches, PressureDose line)
    {
        _settings = settings;
        _events = events;
        _alarms = alarms;
        _switches = switches;
        _line = line;
    }

    /// <summary>The phase.</summary>
    public Phase Phase => _phase;

    /// <summary>Milliseconds spent in it.</summary>
    public int ElapsedMs => _elapsedMs;

    /// <summary>Whether a dose is under way, its retry pauses included.</summary>
    public bool InDose => _phase == Phase.Dose || _phase == Phase.RetryPause;

    /// <summary>Whether the dose under way is a new try from failed.</summary>
    public bool IsTry => _trying;

    /// <summary>Whether a reset led here from failed: it must not start the pump although the rest may be over.</summary>
    public bool IsAfterFailure => _afterFailure;

    /// <summary>Beyond it the time spent in the present phase changes nothing.</summary>
    private int LastLimitMs
    {
        get
        {
            switch (_phase)
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

    public void Advance(int elapsedMs) => _elapsedMs = Saturating.Add(_elapsedMs, elapsedMs);

    /// <summary>Enters a phase; nothing happens if it is the present one.</summary>
    public void Enter(Phase next)
    {
        if (_phase == next)
            return;
        _events.Add(ScanEvent.PhaseChanged, (int)_phase, (int)next);
        if (next != Phase.Dose && next != Phase.RetryPause)
            _trying = false;
        _afterFailure &= next == Phase.Prime || _phase == Phase.Prime;
        _phase = next;
        _elapsedMs = 0;
        if (!_line.Chosen)
            return;
        if (next != Phase.Dose)
            _line.Interrupt();
        else if (_line.Begin())
            _switches.AllowFirstPulse();
    }

    /// <summary>Enters the dose.</summary>
    /// <param name="newTry">Whether it is a new try from failed.</param>
    public void EnterDose(bool newTry)
    {
        _trying = newTry;
        Enter(Phase.Dose);
    }

    public void EnterPrime()
    {
        _primeFrom = _phase;
        Enter(Phase.Prime);
    }

    /// <summary>Back to the phase prime came from; failed only while a pump-stopping failure stands.</summary>
    public void LeavePrime()
    {
        if (_primeFrom == Phase.Failed && !_alarms.PumpStoppingStands)
            EnterRestAfterFailure();
        else
            Enter(_primeFrom);
    }

    public void EnterRestAfterFailure()
    {
        Enter(Phase.Rest);
        _afterFailure = true;
    }

    /// <summary>Leaves failed once no failure that stops the pump stands any more.</summary>
    public void LeaveFailed()
    {
        if (_phase == Phase.Failed && !_alarms.PumpStoppingStands)
            EnterRestAfterFailure();
    }

    /// <summary>Follows the alarms that stop the pump.</summary>
    /// <param name="doseFails">Whether the dose under way has failed in this scan.</param>
    public void ObeyAlarms(bool doseFails)
    {
        bool interlocked = _alarms.InterlockStands && (InDose || _phase == Phase.Rest || _phase == Phase.Prime);
        bool doseEnds = InDose && (doseFails || (_alarms.DoseEndingStands && !_trying));

        // A reset out of failed leads to rest: from stopped that would take the operating stop off without a start.
        if (interlocked || doseEnds)
            Enter(_phase == Phase.Prime && _primeFrom == Phase.Stopped ? Phase.Stopped : Phase.Failed);

        // New settings may make another switch the dose-ending one, and what stood for it no longer stops the pump.
        LeaveFailed();
    }

    /// <summary>Power has come: no pump runs on where it was cut.</summary>
    public void PowerUp()
    {
        _trying = false;
        _elapsedMs = 0;
        _line.Interrupt();
        if (_phase == Phase.Prime)
            _phase = _primeFrom == Phase.Failed && !_alarms.PumpStoppingStands ? Phase.Rest : _primeFrom;
        if (InDose)
            _phase = _alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest;
        if (_phase == Phase.OutputTest)
            _phase = Phase.Stopped;
    }

    public void TransferPhase(StateStream stream)
    {
        _phase = (Phase)stream.Number((int)_phase);
        _primeFrom = (Phase)stream.NumberIf(_phase == Phase.Prime, (int)_primeFrom);
        _trying = stream.Flag(_trying);
        _afterFailure = stream.Flag(_afterFailure);
    }

    public void TransferElapsed(StateStream stream) => _elapsedMs = stream.UpTo(_elapsedMs, LastLimitMs);
}
