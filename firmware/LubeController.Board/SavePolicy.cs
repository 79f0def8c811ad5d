using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// When the state must be saved. What may not be lost is saved at once: a phase, which decides what power-up does, an alarm,
/// and that a dose by pressure has come to venting or has begun its next pressure cycle. All else is saved once in each interval.
/// </summary>
public sealed class SavePolicy
{
    private int _intervalMs;
    private int _sinceMs;
    private Phase _phase;
    private int _standing;
    private bool _venting;

    /// <summary>Makes a policy.</summary>
    /// <param name="intervalMs">Longest time between two saves, milliseconds; below 1 counts as 1.</param>
    public SavePolicy(int intervalMs)
    {
        SetInterval(intervalMs);
    }

    /// <summary>Time since the last save that was due by time, milliseconds; it stops at the interval.</summary>
    public int SinceMs => _sinceMs;

    /// <summary>Whether the interval is over.</summary>
    public bool IntervalIsOver => _sinceMs >= _intervalMs;

    /// <summary>Time until a save is due by time, milliseconds, 1 or more.</summary>
    public int RemainingMs => Saturating.Remaining(_intervalMs, _sinceMs);

    /// <summary>The phase that was saved last.</summary>
    public Phase SavedPhase => _phase;

    /// <summary>The alarms that were saved last as standing, one bit each.</summary>
    public int SavedStanding => _standing;

    /// <summary>Whether a dose by pressure was saved last as venting.</summary>
    public bool SavedVenting => _venting;

    /// <summary>Takes another interval, milliseconds; below 1 counts as 1.</summary>
    public void SetInterval(int intervalMs)
    {
        _intervalMs = intervalMs < 1 ? 1 : intervalMs;
        if (_sinceMs > _intervalMs)
            _sinceMs = _intervalMs;
    }

    /// <summary>Power has come, and the state was saved: the interval begins.</summary>
    public void Begin(Controller core)
    {
        _sinceMs = 0;
        Note(core);
    }

    /// <summary>Goes on from what another policy told.</summary>
    public void Resume(int sinceMs, Phase phase, int standing, bool venting)
    {
        _sinceMs = sinceMs;
        _phase = phase;
        _standing = standing;
        _venting = venting;
    }

    /// <summary>Lets time pass.</summary>
    /// <param name="elapsedMs">Milliseconds, 0 or more.</param>
    public void Advance(int elapsedMs) => _sinceMs = elapsedMs >= _intervalMs - _sinceMs ? _intervalMs : _sinceMs + elapsedMs;

    /// <summary>Whether a save is due now.</summary>
    public bool IsDue(Controller core) =>
        core.Phase != _phase || core.Alarms.Standing != _standing || (core.DoseStep == DoseStep.Vent) != _venting || _sinceMs >= _intervalMs;

    /// <summary>The state was saved. Only a save that was due by time starts the time anew: power cuts one interval apart would else save no progress.</summary>
    public void Saved(Controller core)
    {
        if (_sinceMs >= _intervalMs)
            _sinceMs = 0;
        Note(core);
    }

    private void Note(Controller core)
    {
        _phase = core.Phase;
        _standing = core.Alarms.Standing;
        _venting = core.DoseStep == DoseStep.Vent;
    }
}
