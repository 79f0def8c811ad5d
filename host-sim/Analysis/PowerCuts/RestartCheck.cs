using System;
using System.Collections.Generic;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>Starts a board twice from what a cut left in the storage, and says what does not hold.</summary>
internal sealed class RestartCheck(PowerCutSetup setup, MemoryLayout layout, IBlockStorage storage)
{
    private readonly TrialBoard _board = new();
    private readonly LogEntry _entry = new();
    private readonly HashSet<uint> _found = [];

    /// <summary>What does not hold, or null.</summary>
    public string? Violated(CutOutcomes cut)
    {
        MainLoop loop;
        try
        {
            loop = Start();
        }
        catch (Exception reason) when (reason is not OutOfMemoryException)
        {
            return $"the start throws: {reason.Message}";
        }

        return ViolatedBySettings(cut, loop) ?? ViolatedByState(cut, loop) ?? ViolatedByBootRecord(cut, loop) ?? ViolatedByLog(cut, loop) ?? ViolatedBySecondStart(loop);
    }

    private static string? ViolatedBySettings(CutOutcomes cut, MainLoop loop)
    {
        SettingsMemory settings = loop.Memory.Settings;
        if (settings.State != SettingsState.Stored)
            return $"the settings are {settings.State}";
        for (int field = 0; field < SettingField.Count && cut.Old.Settings.Length > 0; field++)
        {
            if (settings.Values[field] != cut.Old.Settings[field] && settings.Values[field] != cut.New.Settings[field])
                return $"setting '{SettingTable.Spec(field).Name}' is neither the old nor the new one";
        }

        return cut.Old.Settings.Length > 0 && !Same(settings.Values, cut.Old.Settings) && !Same(settings.Values, cut.New.Settings) ? "old and new settings are mixed" : null;
    }

    private static bool Same(Settings settings, int[] values)
    {
        for (int field = 0; field < values.Length; field++)
        {
            if (settings[field] != values[field])
                return false;
        }

        return true;
    }

    private static string? ViolatedByState(CutOutcomes cut, MainLoop loop)
    {
        AlarmList alarms = loop.Core.Alarms;
        if (alarms.Stands(AlarmId.StorageCorrupt))
            return "the cut raises storage-corrupt";
        int lost = cut.AlwaysLatched & ~alarms.Standing;
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            if ((lost & (1 << index)) != 0)
                return $"committed alarm {AlarmTable.Spec((AlarmId)index).Name} is lost";
        }

        if (cut.FaultWaits && !alarms.Stands(AlarmId.LogicFault))
            return "a fault of the main loop that was marked raises no logic-fault";
        int doses = loop.Core.DosesCompleted;
        if (doses < cut.OldDoses)
            return $"the count of doses goes back from {cut.OldDoses} to {doses}";
        return cut.MayStartAs(RestProbe.Bytes(loop.Core)) ? null : "the state is neither the old nor the new one";
    }

    private static string? ViolatedByBootRecord(CutOutcomes cut, MainLoop loop)
    {
        int starts = loop.Memory.Boot.Starts;
        return starts != cut.Old.Starts + 1 && starts != cut.New.Starts + 1
            ? $"the boot record counts {starts} starts after {cut.Old.Starts} that were committed"
            : null;
    }

    private string? ViolatedBySecondStart(MainLoop first)
    {
        MainLoop second = Start();
        if (second.Core.Alarms.Stands(AlarmId.StorageCorrupt) && !first.Core.Alarms.Stands(AlarmId.StorageCorrupt))
            return "the second start after the cut raises storage-corrupt";
        if ((first.Core.Alarms.Standing & ~second.Core.Alarms.Standing) != 0 || second.Core.DosesCompleted != first.Core.DosesCompleted)
            return "the second start after the cut has lost what the first one saved";
        int latched = second.Core.Alarms.Latched;
        second.RunOnce();
        return (latched & ~second.Core.Alarms.Latched) != 0 ? "the first scan after the cut clears a latch" : null;
    }

    private string? ViolatedByLog(CutOutcomes cut, MainLoop loop)
    {
        _found.Clear();
        uint newest = 0;
        Logbook log = loop.Memory.Log;
        for (int place = 0; place < log.Places; place++)
        {
            if (!log.TryRead(place, _entry))
                continue;
            _found.Add(_entry.Sequence);

            // The number of an entry that was torn before its first byte is given to the start's own.
            bool known = cut.Old.Log.TryGetValue(_entry.Sequence, out (int Block, ulong Print) kept);
            if (known && kept.Print != Promises.PrintOf(_entry.What, _entry.Subject, _entry.UptimeS, _entry.Detail))
                return $"entry {_entry.Sequence} of the logbook says something else than was written";
            if (!known && _entry.Sequence <= newest)
                return $"entry {_entry.Sequence} of the logbook was never written";
            newest = _entry.Sequence;
        }

        foreach (uint number in cut.Old.Log.Keys)
        {
            // The start after the cut may itself turn to the oldest block, whose entries go with it.
            if (!_found.Contains(number) && cut.New.Log.ContainsKey(number) && !GoesBy(cut, log, number))
                return $"entry {number} of the logbook is lost";
        }

        return null;
    }

    private bool GoesBy(CutOutcomes cut, Logbook log, uint number) =>
        log.Ring.Newest == cut.Old.Log[number].Block - layout.FirstLog && cut.Old.Log[number].Block != cut.NewestBlock;

    private MainLoop Start() => new(_board, storage, setup.Settings, setup.MakeRule?.Invoke());
}
