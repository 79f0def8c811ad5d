namespace LubeController.Core;

/// <summary>
/// What is shown of the alarms: acknowledged or not, shelved, suppressed by design, out of service, and which came first. It
/// changes nothing else: interlocks, latches, the phase and the healthy relay never ask here.
/// </summary>
internal sealed class Annunciation
{
    private const int NoAlarm = -1;

    private readonly ScanEvents _events;
    private readonly int[] _shelvedMs = new int[AlarmTable.Count];
    private int _shelved;
    private int _suppressed;
    private int _outOfService;
    private int _unseen;
    private int _firstUp = NoAlarm;

    public Annunciation(ScanEvents events)
    {
        _events = events;
    }

    /// <summary>One bit for each alarm that waits to be acknowledged.</summary>
    public int Unseen => _unseen;

    /// <summary>One bit for each alarm that a person hides: shelved, or out of service.</summary>
    public int HiddenByPerson => _shelved | _outOfService;

    /// <summary>One bit for each alarm that is not shown.</summary>
    public int Hidden => HiddenByPerson | _suppressed;

    /// <summary>The alarm that came first, as a number; -1 where none stands and none waits.</summary>
    public int FirstUp => _firstUp;

    /// <summary>The state of an alarm.</summary>
    public AlarmState StateOf(AlarmId id, bool isActive, bool isLatched)
    {
        int bit = Bit(id);
        if ((_outOfService & bit) != 0)
            return AlarmState.OutOfService;
        if ((_shelved & bit) != 0)
            return AlarmState.Shelved;
        if ((_suppressed & bit) != 0)
            return AlarmState.SuppressedByDesign;
        bool unseen = (_unseen & bit) != 0;
        if (isActive)
            return unseen ? AlarmState.Unacknowledged : AlarmState.Acknowledged;
        if (isLatched)
            return unseen ? AlarmState.LatchedUnacknowledged : AlarmState.LatchedAcknowledged;
        return unseen ? AlarmState.ReturnedUnacknowledged : AlarmState.Normal;
    }

    /// <summary>Marks every alarm as acknowledged.</summary>
    public void Acknowledge(int standing)
    {
        _unseen = 0;
        ForgetFirstUp(standing);
    }

    /// <summary>Hides an alarm for a time; one that is shelved already takes the new time.</summary>
    public void Shelve(AlarmId id, int forMs)
    {
        _shelved |= Bit(id);
        _shelvedMs[(int)id] = forMs;
        _events.Add(ScanEvent.AlarmShelved, (int)id, forMs);
    }

    /// <summary>Ends the shelving of an alarm.</summary>
    /// <returns>Whether it was shelved.</returns>
    public bool Unshelve(AlarmId id)
    {
        int bit = Bit(id);
        if ((_shelved & bit) == 0)
            return false;
        _shelved &= ~bit;
        _shelvedMs[(int)id] = 0;
        _events.Add(ScanEvent.ShelvingEnded, (int)id, 0);
        return true;
    }

    /// <summary>Takes an alarm out of service, or puts it back.</summary>
    /// <returns>Whether that changed anything.</returns>
    public bool SetOutOfService(AlarmId id, bool isOut)
    {
        int bit = Bit(id);
        if (((_outOfService & bit) != 0) == isOut)
            return false;
        _outOfService ^= bit;
        _events.Add(isOut ? ScanEvent.TakenOutOfService : ScanEvent.PutIntoService, (int)id, 0);
        return true;
    }

    /// <summary>Lets time pass under the alarms that are shelved.</summary>
    public void Advance(int elapsedMs)
    {
        for (int index = 0, left = _shelved; left != 0 && index < AlarmTable.Count; index++, left >>= 1)
        {
            if ((left & 1) != 0)
                _shelvedMs[index] = _shelvedMs[index] > elapsedMs ? _shelvedMs[index] - elapsedMs : 0;
        }
    }

    /// <summary>The first alarm whose time on the shelf is over; -1 if there is none.</summary>
    public int FindShelvedTooLong()
    {
        for (int index = 0, left = _shelved; left != 0 && index < AlarmTable.Count; index++, left >>= 1)
        {
            if ((left & 1) != 0 && _shelvedMs[index] == 0)
                return index;
        }

        return NoAlarm;
    }

    public int DeadlineMs()
    {
        int deadline = Saturating.Never;
        for (int index = 0, left = _shelved; left != 0 && index < AlarmTable.Count; index++, left >>= 1)
        {
            if ((left & 1) != 0)
                deadline = Saturating.Min(deadline, Saturating.Remaining(_shelvedMs[index], 0));
        }

        return deadline;
    }

    /// <summary>An alarm was raised: it waits to be acknowledged, unless it is hidden or follows from another.</summary>
    public void NoteRaised(int index, int active)
    {
        int bit = 1 << index;
        int causes = AlarmTable.Spec((AlarmId)index).Causes & active & ~HiddenByPerson;
        if ((_suppressed & bit) != 0 && causes == 0)
        {
            _suppressed &= ~bit;
            _events.Add(ScanEvent.SuppressionEnded, index, 0);
        }

        if ((Hidden & bit) != 0 || causes != 0)
            return;
        if (_firstUp == NoAlarm || _unseen == 0)
            _firstUp = index;
        _unseen |= bit;
    }

    /// <summary>
    /// Finds what is suppressed: what comes while a cause of it is active, and then as long as one stands. A cause of which only
    /// the latch is left hides nothing new. An alarm that is no longer hidden waits to be acknowledged if it stands.
    /// </summary>
    /// <param name="active">The alarms that are active, one bit each.</param>
    /// <param name="standing">The alarms that stand, one bit each.</param>
    /// <param name="shown">The alarms that a person has just shown again, one bit each.</param>
    public void Update(int active, int standing, int shown)
    {
        int before = _suppressed;
        int visible = ~HiddenByPerson;
        int suppressed = 0;
        for (int index = 0, left = standing; left != 0 && index < AlarmTable.Count; index++, left >>= 1)
        {
            if ((left & 1) == 0)
                continue;
            int bit = 1 << index;
            int causes = AlarmTable.Spec((AlarmId)index).Causes & visible;
            if ((causes & active) != 0 || ((before & bit & visible) != 0 && (causes & standing) != 0))
                suppressed |= bit;
        }

        _suppressed = suppressed;
        NoteSuppression(suppressed & ~before, ScanEvent.AlarmSuppressed, standing);
        NoteSuppression(before & ~suppressed, ScanEvent.SuppressionEnded, standing);
        shown |= before & ~suppressed;
        _unseen = (_unseen | (shown & standing)) & ~Hidden;
        ForgetFirstUp(standing);
    }

    public void Transfer(StateStream stream)
    {
        _unseen = stream.Number(_unseen);
        _shelved = stream.Number(_shelved);
        _suppressed = stream.Number(_suppressed);
        _outOfService = stream.Number(_outOfService);
        _firstUp = stream.Number(_firstUp);
        for (int index = 0; index < AlarmTable.Count; index++)
            _shelvedMs[index] = stream.Number(_shelvedMs[index]);
    }

    private static int Bit(AlarmId id) => 1 << (int)id;

    private void NoteSuppression(int which, ScanEvent kind, int standing)
    {
        for (int index = 0; which != 0 && index < AlarmTable.Count; index++, which >>= 1)
        {
            if ((which & 1) != 0)
                _events.Add(kind, index, AlarmTable.Spec((AlarmId)index).Causes & standing);
        }
    }

    private void ForgetFirstUp(int standing)
    {
        if (standing == 0 && _unseen == 0)
            _firstUp = NoAlarm;
    }
}
