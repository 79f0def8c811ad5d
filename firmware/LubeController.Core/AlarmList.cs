namespace LubeController.Core;

/// <summary>
/// The alarms at work. An alarm is <em>active</em> from the end of its delay on until the end of its delay off, and
/// <em>stands</em> while it is active or latched. All state is durations and flags, so that it can be saved and compared.
/// </summary>
public sealed class AlarmList
{
    private readonly AlarmDelays _delays;
    private readonly ScanEvents _events;
    private readonly Annunciation _annunciation;
    private int _active;
    private int _latched;
    private int _escalated;
    private bool _interlockStands;
    private bool _doseEndingStands;
    private bool _holdingStands;
    private int _failures;
    private bool _otherStands;

    internal AlarmList(Settings settings, ScanEvents events)
    {
        _delays = new AlarmDelays(settings);
        _events = events;
        _annunciation = new Annunciation(events);
    }

    /// <summary>One bit for each alarm that stands; bit number is the alarm.</summary>
    public int Standing => _active | _latched;

    /// <summary>One bit for each alarm that is latched.</summary>
    public int Latched => _latched;

    /// <summary>Whether an interlock stands.</summary>
    public bool InterlockStands => _interlockStands;

    /// <summary>Whether a dose-ending alarm stands.</summary>
    public bool DoseEndingStands => _doseEndingStands;

    /// <summary>Whether an alarm stands that holds the pump without ending the dose.</summary>
    public bool HoldingStands => _holdingStands;

    /// <summary>One bit for each alarm of category failure that stands.</summary>
    public int Failures => _failures;

    /// <summary>Whether an alarm of category failure stands.</summary>
    public bool FailureStands => _failures != 0;

    /// <summary>Whether an alarm of another category stands that is shown.</summary>
    public bool OtherStands => _otherStands;

    /// <summary>Whether an interlock or a dose-ending alarm stands.</summary>
    public bool PumpStoppingStands => _interlockStands || _doseEndingStands;

    /// <summary>Whether an alarm stands.</summary>
    public bool Stands(AlarmId id) => (Standing & Bit(id)) != 0;

    /// <summary>Whether an alarm is active: its condition lasts, delays considered.</summary>
    public bool IsActive(AlarmId id) => (_active & Bit(id)) != 0;

    /// <summary>Whether an alarm is latched.</summary>
    public bool IsLatched(AlarmId id) => (_latched & Bit(id)) != 0;

    /// <summary>One bit for each alarm that waits to be acknowledged.</summary>
    public int Unseen => _annunciation.Unseen;

    /// <summary>One bit for each alarm that a person keeps from being shown: shelved, or out of service.</summary>
    public int HiddenByPerson => _annunciation.HiddenByPerson;

    /// <summary>Whether any alarm waits to be acknowledged.</summary>
    public bool AnyUnseen => _annunciation.Unseen != 0;

    /// <summary>Whether an alarm stands that is shown.</summary>
    public bool AnyShown => (Standing & ~_annunciation.Hidden) != 0;

    /// <summary>
    /// The alarm that came first of those that wait to be acknowledged or were acknowledged since; the next one raised while none
    /// waits takes its place, so that what has long been known hides no new cause. As a number; -1 where none stands and none waits.
    /// </summary>
    public int FirstUp => _annunciation.FirstUp;

    /// <summary>Whether an alarm waits to be acknowledged.</summary>
    public bool IsUnseen(AlarmId id) => (Unseen & Bit(id)) != 0;

    /// <summary>The state of an alarm.</summary>
    public AlarmState StateOf(AlarmId id) => _annunciation.StateOf(id, IsActive(id), IsLatched(id));

    /// <summary>How an alarm acts now.</summary>
    public AlarmAction ActionOf(AlarmId id) =>
        (_escalated & Bit(id)) != 0 ? AlarmTable.Spec(id).EscalatedAction : AlarmTable.Spec(id).Action;

    /// <summary>Category of an alarm now.</summary>
    public AlarmCategory CategoryOf(AlarmId id) =>
        (_escalated & Bit(id)) != 0 ? AlarmCategory.Failure : AlarmTable.Spec(id).Category;

    internal void Advance(int elapsedMs)
    {
        _delays.Advance(elapsedMs, _active);
        _annunciation.Advance(elapsedMs);
    }

    /// <summary>Says whether the condition of an alarm is present now.</summary>
    internal void SetCondition(AlarmId id, bool present) => _delays.Set(id, present);

    /// <summary>The condition was present for an instant; its delay off begins now.</summary>
    internal void Touch(AlarmId id)
    {
        _delays.Release(id);
        _delays.Restart(id);
        Raise((int)id);
    }

    /// <summary>The condition is present until <see cref="EndAtOnce"/>.</summary>
    internal void Hold(AlarmId id)
    {
        _delays.Hold(id);
        Raise((int)id);
    }

    /// <summary>Ends a condition without waiting for the delay off.</summary>
    internal void EndAtOnce(AlarmId id)
    {
        _delays.Release(id);
        if (IsActive(id))
            End((int)id);
    }

    /// <summary>
    /// Says whether an alarm of which the table knows that it becomes a failure is one now. An active alarm that becomes a failure is
    /// another alarm to whoever has acknowledged it before: it is raised again.
    /// </summary>
    internal void SetEscalated(AlarmId id, bool escalated)
    {
        int bit = Bit(id);
        if (((_escalated & bit) != 0) == escalated)
            return;
        _escalated ^= bit;
        if (escalated && IsActive(id))
            NoteRaised((int)id);
        Summarise(0);
    }

    /// <summary>Ends the conditions that only a running dose can show; what is latched stands on.</summary>
    internal void EndShownByDose()
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if (AlarmTable.Spec((AlarmId)index).Action == AlarmAction.DoseEnding)
                EndAtOnce((AlarmId)index);
        }
    }

    /// <summary>Moves every alarm whose delay is over. Called once in each scan, after the conditions.</summary>
    internal void Settle()
    {
        for (int index = 0, waiting = Waiting; waiting != 0 && index < AlarmTable.Count; index++, waiting >>= 1)
        {
            if ((waiting & 1) != 0)
                SettleOne(index);
        }

        for (int index = _annunciation.FindShelvedTooLong(); index >= 0; index = _annunciation.FindShelvedTooLong())
            Unshelve((AlarmId)index);
    }

    /// <summary>Moves one alarm if its delay is over, ahead of the others.</summary>
    internal void Settle(AlarmId id) => SettleOne((int)id);

    /// <summary>Clears the latch of every alarm whose condition has ended.</summary>
    internal void ClearLatches()
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            int bit = 1 << index;
            if ((_latched & ~_active & ~_delays.Conditions & bit) == 0)
                continue;
            _latched &= ~bit;
            _events.Add(ScanEvent.LatchCleared, index, 0);
        }

        Summarise(0);
    }

    internal void Acknowledge() => _annunciation.Acknowledge(Standing);

    internal void Shelve(AlarmId id, int forMs)
    {
        _annunciation.Shelve(id, forMs);
        Summarise(0);
    }

    internal void Unshelve(AlarmId id)
    {
        if (_annunciation.Unshelve(id))
            Summarise(Bit(id));
    }

    internal void SetOutOfService(AlarmId id, bool isOut)
    {
        if (_annunciation.SetOutOfService(id, isOut))
            Summarise(isOut ? 0 : Bit(id));
    }

    internal int DeadlineMs() => Saturating.Min(_annunciation.DeadlineMs(), _delays.DeadlineMs(_active));

    internal void Transfer(StateStream stream)
    {
        _active = stream.Number(_active);
        _latched = stream.Number(_latched);
        TransferEscalated(stream);
        _delays.Transfer(stream, _active);
        _annunciation.Transfer(stream);
        Summarise(0);
    }

    private static int Bit(AlarmId id) => 1 << (int)id;

    /// <summary>One bit for each alarm whose delay runs: condition and alarm say different things.</summary>
    private int Waiting => _delays.Conditions ^ _active;

    private void SettleOne(int index)
    {
        if ((Waiting & (1 << index)) == 0 || !_delays.IsOver(index))
            return;
        if ((_delays.Conditions & (1 << index)) != 0)
            Raise(index);
        else
            End(index);
    }

    private void Raise(int index)
    {
        int bit = 1 << index;
        bool wasActive = (_active & bit) != 0;
        _active |= bit;
        if (AlarmTable.Spec((AlarmId)index).Latches)
            _latched |= bit;
        if (!wasActive)
            NoteRaised(index);
        Summarise(0);
    }

    private void NoteRaised(int index)
    {
        _annunciation.NoteRaised(index, _active);
        _events.Add(ScanEvent.AlarmRaised, index, 0);
    }

    private void End(int index)
    {
        _active &= ~(1 << index);
        _events.Add(ScanEvent.AlarmEnded, index, 0);
        Summarise(0);
    }

    private void TransferEscalated(StateStream stream)
    {
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if (AlarmTable.Spec((AlarmId)index).BecomesFailure)
                _escalated = stream.FlagIn(_escalated, 1 << index);
        }
    }

    /// <summary>Sums up what stands and what is shown of it.</summary>
    /// <param name="shown">Alarms that a person has just shown again, one bit each.</param>
    private void Summarise(int shown)
    {
        int standing = Standing;
        _annunciation.Update(_active, standing, shown);
        int hidden = _annunciation.Hidden;
        _interlockStands = false;
        _holdingStands = false;
        _doseEndingStands = false;
        _failures = 0;
        _otherStands = false;
        for (int index = 0; standing != 0 && index < AlarmTable.Count; index++, standing >>= 1)
        {
            if ((standing & 1) == 0)
                continue;
            AlarmAction action = ActionOf((AlarmId)index);
            _interlockStands |= action == AlarmAction.Interlock;
            _doseEndingStands |= action == AlarmAction.DoseEnding;
            _holdingStands |= action == AlarmAction.Holding;
            if (CategoryOf((AlarmId)index) == AlarmCategory.Failure)
                _failures |= 1 << index;
            else
                _otherStands |= (hidden & (1 << index)) == 0;
        }
    }
}
