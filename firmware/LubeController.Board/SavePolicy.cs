using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// When the state must be saved. Saved at once: a change of phase, which decides what power-up does; a change of the alarms
/// that stand, are failures, wait to be acknowledged or are hidden by a person; and a dose by pressure that starts venting or
/// begins its next pressure cycle. Everything else is saved once in each interval.
/// </summary>
public sealed class SavePolicy
{
    /// <summary>How many numbers <see cref="CopyTo"/> writes.</summary>
    public const int NumberCount = 7;

    private int _intervalMs;
    private int _sinceMs;
    private int _phase;
    private int _standing;
    private int _failures;
    private int _unseen;
    private int _hidden;
    private int _venting;

    /// <summary>Makes a policy.</summary>
    /// <param name="intervalMs">Longest time between two saves, milliseconds; below 1 counts as 1.</param>
    public SavePolicy(int intervalMs)
    {
        SetInterval(intervalMs);
    }

    /// <summary>Whether the interval is over.</summary>
    public bool IntervalIsOver => _sinceMs >= _intervalMs;

    /// <summary>Time until a save is due by time, milliseconds, 1 or more.</summary>
    public int RemainingMs => Saturating.Remaining(_intervalMs, _sinceMs);

    /// <summary>The alarms that were saved last as standing, one bit each.</summary>
    public int SavedStanding => _standing;

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

    /// <summary>Copies everything that another policy needs to continue from here.</summary>
    /// <param name="numbers">Takes <see cref="NumberCount"/> numbers from its start on.</param>
    public void CopyTo(int[] numbers)
    {
        numbers[0] = _sinceMs;
        numbers[1] = _phase;
        numbers[2] = _standing;
        numbers[3] = _failures;
        numbers[4] = _unseen;
        numbers[5] = _hidden;
        numbers[6] = _venting;
    }

    /// <summary>Continues from what another policy copied.</summary>
    /// <param name="numbers">What <see cref="CopyTo"/> wrote.</param>
    public void CopyFrom(int[] numbers)
    {
        _sinceMs = numbers[0];
        _phase = numbers[1];
        _standing = numbers[2];
        _failures = numbers[3];
        _unseen = numbers[4];
        _hidden = numbers[5];
        _venting = numbers[6];
    }

    /// <summary>Lets time pass.</summary>
    /// <param name="elapsedMs">Milliseconds, 0 or more.</param>
    public void Advance(int elapsedMs) => _sinceMs = elapsedMs >= _intervalMs - _sinceMs ? _intervalMs : _sinceMs + elapsedMs;

    /// <summary>Whether a save is due now.</summary>
    public bool IsDue(Controller core) =>
        _sinceMs >= _intervalMs || (int)core.Phase != _phase || Venting(core) != _venting || Changed(core.Alarms);

    /// <summary>The state was saved. Only a save that was due by time restarts the interval; otherwise power cuts one interval apart would save no progress.</summary>
    public void Saved(Controller core)
    {
        if (_sinceMs >= _intervalMs)
            _sinceMs = 0;
        Note(core);
    }

    private static int Venting(Controller core) => core.DoseStep == DoseStep.Vent ? 1 : 0;

    private bool Changed(AlarmList alarms) =>
        alarms.Standing != _standing || alarms.Failures != _failures || alarms.Unseen != _unseen || alarms.HiddenByPerson != _hidden;

    private void Note(Controller core)
    {
        _phase = (int)core.Phase;
        _standing = core.Alarms.Standing;
        _failures = core.Alarms.Failures;
        _unseen = core.Alarms.Unseen;
        _hidden = core.Alarms.HiddenByPerson;
        _venting = Venting(core);
    }
}
