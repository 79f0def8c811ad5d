namespace LubeController.Core;

/// <summary>The conditions of all alarms, and how long each has been other than its alarm: the delays on and off.</summary>
internal sealed class AlarmDelays
{
    private readonly int[] _sinceMs = new int[AlarmTable.Count];
    private readonly Settings _settings;
    private int _conditions;

    public AlarmDelays(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>One bit for each condition that is present.</summary>
    public int Conditions => _conditions;

    /// <summary>Says whether a condition is present now. Only a change begins its delay.</summary>
    public void Set(AlarmId id, bool present)
    {
        int bit = 1 << (int)id;
        if (((_conditions & bit) != 0) == present)
            return;
        _conditions ^= bit;
        _sinceMs[(int)id] = 0;
    }

    /// <summary>Makes a condition present, its delay untouched.</summary>
    public void Hold(AlarmId id) => _conditions |= 1 << (int)id;

    /// <summary>Ends a condition, its delay untouched.</summary>
    public void Release(AlarmId id) => _conditions &= ~(1 << (int)id);

    /// <summary>Begins the delay of an alarm again.</summary>
    public void Restart(AlarmId id) => _sinceMs[(int)id] = 0;

    /// <summary>Whether the delay of an alarm is over.</summary>
    public bool IsOver(int index) => _sinceMs[index] >= DelayMs(index);

    /// <summary>Lets time pass under the alarms that are other than their conditions.</summary>
    public void Advance(int elapsedMs, int active)
    {
        for (int index = 0, waiting = _conditions ^ active; waiting != 0 && index < AlarmTable.Count; index++, waiting >>= 1)
        {
            if ((waiting & 1) != 0)
                _sinceMs[index] = Saturating.Add(_sinceMs[index], elapsedMs);
        }
    }

    public int DeadlineMs(int active)
    {
        int deadline = Saturating.Never;
        for (int index = 0, waiting = _conditions ^ active; waiting != 0 && index < AlarmTable.Count; index++, waiting >>= 1)
        {
            if ((waiting & 1) != 0)
                deadline = Saturating.Min(deadline, Saturating.Remaining(DelayMs(index), _sinceMs[index]));
        }

        return deadline;
    }

    public void Transfer(StateStream stream, int active)
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            int bit = 1 << index;
            _conditions = stream.FlagIn(_conditions, bit);
            _sinceMs[index] = stream.UpTo(_sinceMs[index], ((_conditions ^ active) & bit) != 0 ? DelayMs(index) : 0);
        }
    }

    private int DelayMs(int index) =>
        _settings[(_conditions & (1 << index)) != 0 ? SettingField.DelayOn((AlarmId)index) : SettingField.DelayOff((AlarmId)index)];
}
