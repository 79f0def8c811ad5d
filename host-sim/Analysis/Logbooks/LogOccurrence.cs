using System;
using System.Collections.Generic;

namespace LubeController.Analysis.Logbooks;

/// <summary>A point in time as the board knew it.</summary>
/// <param name="UptimeMs">Time powered in the board's life, milliseconds.</param>
/// <param name="WallTime">Time of day, UTC; null where the board did not know it.</param>
public sealed record LogTime(long UptimeMs, DateTimeOffset? WallTime);

/// <summary>Something that happened and perhaps lasted, joined from the entries of the logbook.</summary>
public sealed record LogOccurrence
{
    /// <summary>Number of its first entry.</summary>
    public required uint Number { get; init; }

    /// <summary>What sort of thing: <c>alarm</c>, <c>phase</c>, <c>press</c>, <c>shelving</c>, <c>out-of-service</c>, <c>start</c>, <c>sensor</c> or <c>board</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>What, by the name that is used everywhere.</summary>
    public required string What { get; init; }

    /// <summary>More about it, or empty.</summary>
    public string Detail { get; init; } = "";

    /// <summary>Who caused it: <c>controller</c>, <c>button</c> or <c>bench</c>.</summary>
    public required string By { get; init; }

    /// <summary>When it began.</summary>
    public required LogTime Began { get; init; }

    /// <summary>When an alarm's condition ended last; null where it has not, and for what is no alarm.</summary>
    public LogTime? ConditionEnded { get; internal set; }

    /// <summary>When it was over; null where it lasts still, and for what lasts no time.</summary>
    public LogTime? Over { get; internal set; }

    /// <summary>When an alarm was acknowledged; null where it was not.</summary>
    public LogTime? Acknowledged { get; internal set; }

    /// <summary>Who acknowledged it, or empty.</summary>
    public string AcknowledgedBy { get; internal set; } = "";

    /// <summary>When its latch was cleared by reset; null where it was not.</summary>
    public LogTime? Reset { get; internal set; }

    /// <summary>Whether the alarm was the first of those that stood.</summary>
    public bool FirstUp { get; internal set; }

    /// <summary>Alarms for which it was suppressed by design; empty where it was not.</summary>
    public IReadOnlyList<string> SuppressedBy { get; internal set; } = [];

    /// <summary>Whether it was shelved or out of service while it lasted, and by whom, or empty.</summary>
    public string Hidden { get; internal set; } = "";

    /// <summary>Time powered from beginning to end, milliseconds; null where it has no end.</summary>
    public long? LastedMs => Over is { } over ? over.UptimeMs - Began.UptimeMs : null;
}
