using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Logbooks;

/// <summary>Joins the entries of a logbook: what was raised with its end, its acknowledgement and its reset, and phases with their length.</summary>
public sealed class LogOccurrences
{
    private readonly List<LogOccurrence> _all = [];
    private readonly LogOccurrence?[] _alarms = new LogOccurrence?[AlarmTable.Count];
    private readonly bool[] _active = new bool[AlarmTable.Count];
    private readonly string[] _hidden = [.. Enumerable.Repeat("", AlarmTable.Count)];
    private readonly LogOccurrence?[] _hiding = new LogOccurrence?[AlarmTable.Count];
    private readonly bool[] _suppressed = new bool[AlarmTable.Count];
    private readonly List<LogOccurrence> _unseen = [];
    private LogOccurrence? _phase;

    private LogOccurrences()
    {
    }

    /// <summary>Joins entries.</summary>
    /// <param name="entries">The oldest first.</param>
    /// <returns>In order of their beginning.</returns>
    public static IReadOnlyList<LogOccurrence> Of(IEnumerable<LogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var joined = new LogOccurrences();
        foreach (LogEntry entry in entries)
            joined.Take(entry);
        return joined._all;
    }

    private static LogTime TimeOf(LogEntry entry) =>
        new((entry.UptimeS * 1000L) + entry.UptimeMs, entry.HasWallTime ? DateTimeOffset.FromUnixTimeSeconds(entry.WallTimeS) : null);

    private static string SourceOf(LogEntry entry) => NameIn(CoreWords.LogSources, (int)entry.Source);

    private static string NameIn(IReadOnlyList<string> names, int index) => index >= 0 && index < names.Count ? names[index] : string.Create(CultureInfo.InvariantCulture, $"unknown {index}");

    private void Take(LogEntry entry)
    {
        switch (entry.What)
        {
            case (int)ScanEvent.PhaseChanged:
                ChangePhase(entry);
                break;
            case (int)ScanEvent.PressObeyed:
                Press(entry);
                break;
            case (int)ScanEvent.PressRefused:
                Add(entry, "press", NameIn(CoreWords.Buttons, entry.Subject), "refused");
                break;
            case (int)ScanEvent.SwitchFound:
                Add(entry, "sensor", string.Create(CultureInfo.InvariantCulture, $"cycle-switch-{entry.Subject + 1}"), "found wrong by " + NameIn(CoreWords.SwitchProofs, entry.Detail));
                break;
            case (int)ScanEvent.SensorsDisagree:
                Add(entry, "sensor", NameIn(CoreWords.SensorPairs, entry.Subject), entry.Detail > 0 ? string.Create(CultureInfo.InvariantCulture, $"disagree: {entry.Detail} % of the volume was pumped") : "disagree");
                break;
            case >= LogEvent.Started:
                TakeBoard(entry);
                break;
            default:
                if (entry.Subject < AlarmTable.Count)
                    TakeAlarm(entry, entry.Subject);
                break;
        }
    }

    private void TakeBoard(LogEntry entry)
    {
        (string what, string detail) = entry.What switch
        {
            LogEvent.Started => (NameIn(CoreWords.ResetCauses, entry.Subject), string.Create(CultureInfo.InvariantCulture, $"start {entry.Detail}")),
            LogEvent.FaultCaught => ("fault of the main loop", string.Create(CultureInfo.InvariantCulture, $"fault {entry.Detail}")),
            LogEvent.SettingsStored => ("settings stored", string.Create(CultureInfo.InvariantCulture, $"store {entry.Detail}")),
            LogEvent.SettingsMended => ("settings mended", "a bank was written anew from the other"),
            LogEvent.StorageCorrupt => ("storage corrupt", string.Create(CultureInfo.InvariantCulture, $"{entry.Subject} places")),
            LogEvent.SettingsUnreadable => ("settings unreadable", entry.Subject == (int)SettingsState.Refused ? "refused" : "lost"),
            LogEvent.StateForeign => ("state of another version", "the controller started afresh"),
            LogEvent.EventsLost => ("events lost", string.Create(CultureInfo.InvariantCulture, $"{entry.Subject} of one scan")),
            _ => ("unknown", string.Create(CultureInfo.InvariantCulture, $"{entry.What}")),
        };

        // Only these two go on over a start.
        if (entry.What == LogEvent.Started && _phase is not { What: "stopped" or "failed" })
            EndPhase(entry);
        Add(entry, entry.What == LogEvent.Started ? "start" : "board", what, detail);
    }

    private void TakeAlarm(LogEntry entry, int alarm)
    {
        LogOccurrence? now = _alarms[alarm];
        switch ((ScanEvent)entry.What)
        {
            case ScanEvent.AlarmRaised:
                Raise(entry, alarm);
                break;
            case ScanEvent.AlarmEnded:
                _active[alarm] = false;
                if (now == null)
                    break;
                now.ConditionEnded = TimeOf(entry);
                if (!AlarmTable.Spec((AlarmId)alarm).Latches)
                    Close(entry, alarm);
                break;
            case ScanEvent.LatchCleared:
                if (now == null)
                    break;
                now.Reset = TimeOf(entry);
                if (!_active[alarm])
                    Close(entry, alarm);
                break;
            case ScanEvent.AlarmSuppressed:
                _suppressed[alarm] = true;
                Hide(now);
                if (now != null)
                    now.SuppressedBy = [.. now.SuppressedBy.Union(CoreWords.AlarmsOf(entry.Detail))];
                break;
            case ScanEvent.SuppressionEnded:
                _suppressed[alarm] = false;
                Show(alarm);
                break;
            case ScanEvent.AlarmShelved:
                _hidden[alarm] = string.Create(CultureInfo.InvariantCulture, $"shelved for {entry.Detail / 1000.0} s by {SourceOf(entry)}");
                _hiding[alarm] = Add(entry, "shelving", AlarmTable.Spec((AlarmId)alarm).Name, string.Create(CultureInfo.InvariantCulture, $"for {entry.Detail / 1000.0} s"));
                HideBy(now, alarm);
                break;
            case ScanEvent.TakenOutOfService:
                _hidden[alarm] = $"out of service by {SourceOf(entry)}";
                _hiding[alarm] = Add(entry, "out-of-service", AlarmTable.Spec((AlarmId)alarm).Name, "");
                HideBy(now, alarm);
                break;
            default:
                _hidden[alarm] = "";
                if (_hiding[alarm] is { } hiding)
                    hiding.Over = TimeOf(entry);
                _hiding[alarm] = null;
                Show(alarm);
                break;
        }
    }

    private void Raise(LogEntry entry, int alarm)
    {
        _active[alarm] = true;
        LogOccurrence now = _alarms[alarm] ??= Add(entry, "alarm", AlarmTable.Spec((AlarmId)alarm).Name, "");
        now.ConditionEnded = null;
        now.FirstUp |= entry.FirstUp;
        HideBy(now, alarm);
        Show(alarm);
    }

    /// <summary>What is shown waits to be acknowledged.</summary>
    private void Show(int alarm)
    {
        if (_alarms[alarm] is { } now && _hidden[alarm].Length == 0 && !_suppressed[alarm] && !_unseen.Contains(now))
            _unseen.Add(now);
    }

    private void Hide(LogOccurrence? occurrence)
    {
        if (occurrence != null)
            _unseen.Remove(occurrence);
    }

    private void HideBy(LogOccurrence? now, int alarm)
    {
        if (now == null || _hidden[alarm].Length == 0)
            return;
        now.Hidden = _hidden[alarm];
        Hide(now);
    }

    private void Close(LogEntry entry, int alarm)
    {
        _alarms[alarm]!.Over = TimeOf(entry);
        _alarms[alarm] = null;
    }

    private void Press(LogEntry entry)
    {
        Add(entry, "press", NameIn(CoreWords.Buttons, entry.Subject), "obeyed");
        if (entry.Subject != (int)Button.Acknowledge)
            return;
        foreach (LogOccurrence waiting in _unseen)
        {
            waiting.Acknowledged = TimeOf(entry);
            waiting.AcknowledgedBy = SourceOf(entry);
        }

        _unseen.Clear();
    }

    private void ChangePhase(LogEntry entry)
    {
        EndPhase(entry);
        if (entry.Detail is not ((int)Phase.Rest or (int)Phase.Dose))
            _phase = Add(entry, "phase", NameIn(CoreWords.Phases, entry.Detail), "");
    }

    private void EndPhase(LogEntry entry)
    {
        if (_phase != null)
            _phase.Over = TimeOf(entry);
        _phase = null;
    }

    private LogOccurrence Add(LogEntry entry, string kind, string what, string detail)
    {
        var occurrence = new LogOccurrence { Number = entry.Sequence, Kind = kind, What = what, Detail = detail, By = SourceOf(entry), Began = TimeOf(entry) };
        _all.Add(occurrence);
        return occurrence;
    }
}
