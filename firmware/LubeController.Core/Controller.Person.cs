namespace LubeController.Core;

/// <content>What is done between two scans: by a person to what is shown of an alarm, and by the main loop at power-up.</content>
public sealed partial class Controller
{
    /// <summary>Told by the main loop at power-up: the last run ended with an exception that it caught.</summary>
    public void NoteLogicFault() => NoteAtPowerUp(AlarmId.LogicFault);

    /// <summary>Told by the main loop: a block of the non-volatile memory other than the settings lost its check value, or a save was refused.</summary>
    public void NoteStorageCorrupt() => NoteAtPowerUp(AlarmId.StorageCorrupt);

    /// <summary>Hides an alarm for a limited time, as a person asks: only what is shown of it changes.</summary>
    /// <param name="id">The alarm.</param>
    /// <param name="forMs">Milliseconds of powered time, 1 to the setting shelve-longest.</param>
    /// <returns>Whether it was done: not for another time, nor for an alarm out of service.</returns>
    public bool Shelve(AlarmId id, int forMs)
    {
        if (forMs < 1 || forMs > _settings[SettingField.ShelveLongestMs] || Alarms.StateOf(id) == AlarmState.OutOfService)
            return false;
        TakeUp();
        Alarms.Shelve(id, forMs);
        return true;
    }

    /// <summary>Shows a shelved alarm again; any other is left as it is.</summary>
    public void Unshelve(AlarmId id)
    {
        TakeUp();
        Alarms.Unshelve(id);
    }

    /// <summary>Milliseconds for which an alarm is still shelved, 1 or more; 0 if it is not.</summary>
    public int ShelvedForMs(AlarmId id)
    {
        int leftMs = Alarms.ShelvedForMs(id);
        return leftMs == 0 ? 0 : Saturating.Remaining(leftMs, _quietMs);
    }

    /// <summary>Takes an alarm out of service, or puts it into service again: only what is shown of it changes.</summary>
    public void SetOutOfService(AlarmId id, bool isOut)
    {
        TakeUp();
        if (isOut)
            Alarms.Unshelve(id);
        Alarms.SetOutOfService(id, isOut);
    }

    /// <summary>What was done between two scans is told by the next one, which must be made.</summary>
    private void TakeUp()
    {
        PassQuietTime();
        if (_eventsTold && Events.Count != 0)
            Events.Clear();
        _eventsTold = false;
        _deadlineMs = 0;
    }
}
