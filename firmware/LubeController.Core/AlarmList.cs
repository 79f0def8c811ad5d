namespace LubeController.Core;

/// <summary>
/// The alarms at work. An alarm is <em>active</em> from the end of its delay on until the end of its delay off, and
/// <em>stands</em> while it is active or latched. All state is durations and flags, so that it can be saved and compared.
/// </summary>
public sealed partial class AlarmList
{
    private readonly bool[] _condition = new bool[AlarmTable.Count];
    private readonly int[] _sinceMs = new int[AlarmTable.Count];
    private readonly Settings _settings;
    private readonly ScanEvents _events;
    private int _active;
    private int _latched;
    private bool _switchFaultEndsDose;
    private bool _protectionLost;

    internal AlarmList(Settings settings, ScanEvents events)
    {
        _settings = settings;
        _events = events;
    }

    /// <summary>One bit for each alarm that stands; bit number is the alarm.</summary>
    public int Standing => _active | _latched;

    /// <summary>One bit for each alarm that is latched.</summary>
    public int Latched => _latched;

    /// <summary>Whether an interlock stands.</summary>
    public bool InterlockStands { get; private set; }

    /// <summary>Whether a dose-ending alarm stands.</summary>
    public bool DoseEndingStands { get; private set; }

    /// <summary>Whether an alarm stands that holds the pump without ending the dose.</summary>
    public bool HoldingStands { get; private set; }

    /// <summary>One bit for each alarm of category failure that stands.</summary>
    public int Failures { get; private set; }

    /// <summary>Whether an alarm of category failure stands.</summary>
    public bool FailureStands => Failures != 0;

    /// <summary>Whether an alarm of another category stands that is shown.</summary>
    public bool OtherStands { get; private set; }

    /// <summary>Whether an interlock or a dose-ending alarm stands.</summary>
    public bool PumpStoppingStands => InterlockStands || DoseEndingStands;

    /// <summary>Whether an alarm stands.</summary>
    public bool Stands(AlarmId id) => (Standing & Bit(id)) != 0;

    /// <summary>Whether an alarm is active: its condition lasts, delays considered.</summary>
    public bool IsActive(AlarmId id) => (_active & Bit(id)) != 0;

    /// <summary>Whether an alarm is latched.</summary>
    public bool IsLatched(AlarmId id) => (_latched & Bit(id)) != 0;

    /// <summary>How an alarm acts now; the switch fault ends doses only where it is the dose-ending switch.</summary>
    public AlarmAction ActionOf(AlarmId id) =>
        id == AlarmId.CycleSwitchFault && _switchFaultEndsDose ? AlarmAction.DoseEnding : AlarmTable.ActionOf(id);

    /// <summary>Category of an alarm now, with the same exception, and that of sensors that disagree where protection is lost.</summary>
    public AlarmCategory CategoryOf(AlarmId id) =>
        (id == AlarmId.CycleSwitchFault && _switchFaultEndsDose) || (id == AlarmId.SensorsDisagree && _protectionLost)
            ? AlarmCategory.Failure
            : AlarmTable.CategoryOf(id);

    internal void Advance(int elapsedMs)
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if (Waits(index))
                _sinceMs[index] = Saturating.Add(_sinceMs[index], elapsedMs);
        }

        if (_shelved != 0)
            AdvanceShelving(elapsedMs);
    }

    /// <summary>Says whether the condition of an alarm is present now.</summary>
    internal void SetCondition(AlarmId id, bool present)
    {
        int index = (int)id;
        if (_condition[index] == present)
            return;
        _condition[index] = present;
        _sinceMs[index] = 0;
    }

    /// <summary>The condition was present for an instant; its end is judged by the delay off from now on.</summary>
    internal void Touch(AlarmId id)
    {
        _condition[(int)id] = false;
        _sinceMs[(int)id] = 0;
        Raise((int)id);
    }

    /// <summary>The condition is present until <see cref="EndAtOnce"/>.</summary>
    internal void Hold(AlarmId id)
    {
        _condition[(int)id] = true;
        Raise((int)id);
    }

    /// <summary>Ends a condition without waiting for the delay off.</summary>
    internal void EndAtOnce(AlarmId id)
    {
        _condition[(int)id] = false;
        if (IsActive(id))
            End((int)id);
    }

    internal void SetSwitchFault(bool endsDose)
    {
        if (_switchFaultEndsDose == endsDose)
            return;
        _switchFaultEndsDose = endsDose;
        TakeCategory(AlarmId.CycleSwitchFault, endsDose);
    }

    internal void SetProtectionLost(bool lost)
    {
        if (_protectionLost == lost)
            return;
        _protectionLost = lost;
        TakeCategory(AlarmId.SensorsDisagree, lost);
    }

    /// <summary>Moves every alarm whose delay is over. Called once in each scan, after the conditions.</summary>
    internal void Settle()
    {
        for (int index = 0; index < AlarmTable.Count; index++)
            SettleOne(index);
        EndShelving();
    }

    /// <summary>Moves one alarm if its delay is over, ahead of the others.</summary>
    internal void Settle(AlarmId id) => SettleOne((int)id);

    /// <summary>Clears the latch of every alarm whose condition has ended.</summary>
    internal void ClearLatches()
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            int bit = 1 << index;
            if ((_latched & bit) == 0 || (_active & bit) != 0 || _condition[index])
                continue;
            _latched &= ~bit;
            _events.Add(ScanEvent.LatchCleared, index, 0);
        }

        Summarise();
    }

    internal int DeadlineMs()
    {
        int deadline = ShelvingDeadlineMs();
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if (Waits(index))
                deadline = Saturating.Min(deadline, Saturating.Remaining(DelayMs(index), _sinceMs[index]));
        }

        return deadline;
    }

    internal void Transfer(StateStream stream)
    {
        _active = stream.Number(_active);
        _latched = stream.Number(_latched);
        _switchFaultEndsDose = stream.Flag(_switchFaultEndsDose);
        _protectionLost = stream.Flag(_protectionLost);
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            _condition[index] = stream.Flag(_condition[index]);
            _sinceMs[index] = stream.UpTo(_sinceMs[index], Waits(index) ? DelayMs(index) : 0);
        }

        TransferLifecycle(stream);
        Summarise();
    }

    private static int Bit(AlarmId id) => 1 << (int)id;

    private bool Waits(int index) => _condition[index] != ((_active & (1 << index)) != 0);

    private int DelayMs(int index) =>
        _settings[_condition[index] ? SettingField.DelayOn((AlarmId)index) : SettingField.DelayOff((AlarmId)index)];

    private void SettleOne(int index)
    {
        if (!Waits(index) || _sinceMs[index] < DelayMs(index))
            return;
        if (_condition[index])
            Raise(index);
        else
            End(index);
    }

    private void Raise(int index)
    {
        int bit = 1 << index;
        bool stood = (Standing & bit) != 0;
        bool wasActive = (_active & bit) != 0;
        _active |= bit;
        if (AlarmTable.Latches((AlarmId)index))
            _latched |= bit;
        if (!stood || !wasActive)
        {
            NoteRaised(index);
            _events.Add(ScanEvent.AlarmRaised, index, 0);
        }

        Summarise();
    }

    /// <summary>An alarm that is active and becomes a failure is another alarm to whoever has seen it before: it is raised again.</summary>
    private void TakeCategory(AlarmId id, bool isFailure)
    {
        if (isFailure && IsActive(id))
        {
            NoteRaised((int)id);
            _events.Add(ScanEvent.AlarmRaised, (int)id, 0);
        }

        Summarise();
    }

    private void End(int index)
    {
        _active &= ~(1 << index);
        _events.Add(ScanEvent.AlarmEnded, index, 0);
        Summarise();
    }

    private void Summarise()
    {
        Show(0);
        InterlockStands = false;
        HoldingStands = false;
        DoseEndingStands = false;
        Failures = 0;
        OtherStands = false;
        int standing = Standing;
        for (int index = 0; standing != 0 && index < AlarmTable.Count; index++, standing >>= 1)
        {
            if ((standing & 1) == 0)
                continue;
            AlarmAction action = ActionOf((AlarmId)index);
            InterlockStands |= action == AlarmAction.Interlock;
            DoseEndingStands |= action == AlarmAction.DoseEnding;
            HoldingStands |= action == AlarmAction.Holding;
            if (CategoryOf((AlarmId)index) == AlarmCategory.Failure)
                Failures |= 1 << index;
            else
                OtherStands |= (Hidden & (1 << index)) == 0;
        }
    }
}
