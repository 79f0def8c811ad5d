namespace LubeController.Core;

/// <content>
/// What is shown of the alarms: seen or not, shelved, suppressed by design, out of service, and which came first. All of
/// it is annunciation only: interlocks, latches, the phase and the healthy relay never ask here.
/// </content>
public sealed partial class AlarmList
{
    private const int NoAlarm = -1;

    private readonly int[] _shelvedMs = new int[AlarmTable.Count];
    private int _unseen;
    private int _shelved;
    private int _suppressed;
    private int _outOfService;

    /// <summary>One bit for each alarm that waits to be acknowledged.</summary>
    public int Unseen => _unseen;

    /// <summary>One bit for each alarm that a person keeps from being shown: shelved, or out of service.</summary>
    public int HiddenByPerson => _shelved | _outOfService;

    /// <summary>Whether any alarm waits to be acknowledged.</summary>
    public bool AnyUnseen => _unseen != 0;

    /// <summary>Whether an alarm stands that is shown.</summary>
    public bool AnyShown => (Standing & ~Hidden) != 0;

    /// <summary>
    /// The alarm that came first of those that wait to be acknowledged or were acknowledged since; the next one raised while none
    /// waits takes its place, so that what has long been known hides no new cause. As a number; -1 where none stands and none waits.
    /// </summary>
    public int FirstUp { get; private set; } = NoAlarm;

    private int Hidden => HiddenByPerson | _suppressed;

    /// <summary>Whether an alarm waits to be acknowledged.</summary>
    public bool IsUnseen(AlarmId id) => (_unseen & Bit(id)) != 0;

    internal int ShelvedForMs(AlarmId id) => (_shelved & Bit(id)) != 0 ? _shelvedMs[(int)id] : 0;

    /// <summary>The state of an alarm.</summary>
    public AlarmState StateOf(AlarmId id)
    {
        int bit = Bit(id);
        if ((_outOfService & bit) != 0)
            return AlarmState.OutOfService;
        if ((_shelved & bit) != 0)
            return AlarmState.Shelved;
        if ((_suppressed & bit) != 0)
            return AlarmState.SuppressedByDesign;
        bool unseen = (_unseen & bit) != 0;
        if ((_active & bit) != 0)
            return unseen ? AlarmState.Unacknowledged : AlarmState.Acknowledged;
        if ((_latched & bit) != 0)
            return unseen ? AlarmState.LatchedUnacknowledged : AlarmState.LatchedAcknowledged;
        return unseen ? AlarmState.ReturnedUnacknowledged : AlarmState.Normal;
    }

    internal void Acknowledge()
    {
        _unseen = 0;
        ForgetFirst();
    }

    /// <summary>Hides an alarm for a time; one that is shelved already is so for the new time.</summary>
    internal void Shelve(AlarmId id, int forMs)
    {
        _shelved |= Bit(id);
        _shelvedMs[(int)id] = forMs;
        _events.Add(ScanEvent.AlarmShelved, (int)id, forMs);
        Summarise();
    }

    internal void Unshelve(AlarmId id)
    {
        int bit = Bit(id);
        if ((_shelved & bit) == 0)
            return;
        _shelved &= ~bit;
        _shelvedMs[(int)id] = 0;
        _events.Add(ScanEvent.ShelvingEnded, (int)id, 0);
        Show(bit);
        Summarise();
    }

    internal void SetOutOfService(AlarmId id, bool isOut)
    {
        int bit = Bit(id);
        if (((_outOfService & bit) != 0) == isOut)
            return;
        _outOfService ^= bit;
        _events.Add(isOut ? ScanEvent.TakenOutOfService : ScanEvent.PutIntoService, (int)id, 0);
        Show(isOut ? 0 : bit);
        Summarise();
    }

    private void AdvanceShelving(int elapsedMs)
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if ((_shelved & (1 << index)) != 0)
                _shelvedMs[index] = _shelvedMs[index] > elapsedMs ? _shelvedMs[index] - elapsedMs : 0;
        }
    }

    private void EndShelving()
    {
        if (_shelved == 0)
            return;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if ((_shelved & (1 << index)) != 0 && _shelvedMs[index] == 0)
                Unshelve((AlarmId)index);
        }
    }

    private int ShelvingDeadlineMs()
    {
        int deadline = Saturating.Never;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if ((_shelved & (1 << index)) != 0)
                deadline = Saturating.Min(deadline, Saturating.Remaining(_shelvedMs[index], 0));
        }

        return deadline;
    }

    private void NoteRaised(int index)
    {
        int bit = 1 << index;
        int causes = AlarmTable.CausesOf((AlarmId)index) & _active & ~HiddenByPerson;
        if ((_suppressed & bit) != 0 && causes == 0)
        {
            _suppressed &= ~bit;
            _events.Add(ScanEvent.SuppressionEnded, index, 0);
        }

        if ((Hidden & bit) != 0 || causes != 0)
            return;
        if (FirstUp == NoAlarm || _unseen == 0)
            FirstUp = index;
        _unseen |= bit;
    }

    /// <summary>
    /// Finds anew what is suppressed: what comes while a cause of it is active, and then as long as one stands. A cause of which only
    /// the latch is left hides nothing new. Brings what waits into line with what is hidden. Whatever is hidden no more is
    /// normal or not acknowledged, by whether it stands.
    /// </summary>
    /// <param name="shown">Alarms that have just been shown again.</param>
    private void Show(int shown)
    {
        int before = _suppressed;
        int visible = ~HiddenByPerson;
        int suppressed = 0;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            int bit = 1 << index;
            int causes = AlarmTable.CausesOf((AlarmId)index) & visible;
            bool follows = (causes & _active) != 0 || ((before & bit & visible) != 0 && (causes & Standing) != 0);
            if ((Standing & bit) != 0 && follows)
                suppressed |= bit;
        }

        _suppressed = suppressed;
        TellSuppression(suppressed & ~before, ScanEvent.AlarmSuppressed);
        TellSuppression(before & ~suppressed, ScanEvent.SuppressionEnded);
        shown |= before & ~suppressed;
        _unseen |= shown & Standing;
        _unseen &= ~Hidden;
        ForgetFirst();
    }

    private void TellSuppression(int which, ScanEvent kind)
    {
        for (int index = 0; which != 0 && index < AlarmTable.Count; index++, which >>= 1)
        {
            if ((which & 1) != 0)
                _events.Add(kind, index, AlarmTable.CausesOf((AlarmId)index) & Standing);
        }
    }

    private void ForgetFirst()
    {
        if (Standing == 0 && _unseen == 0)
            FirstUp = NoAlarm;
    }

    private void TransferLifecycle(StateStream stream)
    {
        _unseen = stream.Number(_unseen);
        _shelved = stream.Number(_shelved);
        _suppressed = stream.Number(_suppressed);
        _outOfService = stream.Number(_outOfService);
        FirstUp = stream.Number(FirstUp);
        for (int index = 0; index < AlarmTable.Count; index++)
            _shelvedMs[index] = stream.Number(_shelvedMs[index]);
    }
}
