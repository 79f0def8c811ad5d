using System;
using System.Collections.Generic;
using System.Globalization;

namespace LubeController.Analysis.Logbooks;

/// <summary>A logbook for a terminal, one line for each occurrence.</summary>
public static class LogbookText
{
    /// <summary>The line of one occurrence.</summary>
    public static string Line(LogOccurrence occurrence)
    {
        ArgumentNullException.ThrowIfNull(occurrence);
        string at = LogbookTimes.At(occurrence.Began);
        return $"{Seconds(occurrence.Began.UptimeMs),12}  {(at.Length > 0 ? at + "  " : "")}{occurrence.Kind,-16}{occurrence.What}: {string.Join(", ", Facts(occurrence))}".TrimEnd(' ', ':');
    }

    private static IEnumerable<string> Facts(LogOccurrence occurrence)
    {
        if (occurrence.Detail.Length > 0)
            yield return occurrence.Detail;
        if (occurrence.LastedMs is { } lasted)
            yield return $"lasted {Seconds(lasted)}";
        else if (occurrence.ConditionEnded is { } ended)
            yield return $"condition ended at {Seconds(ended.UptimeMs)}, latched still";
        else if (occurrence.Kind is "alarm" or "phase")
            yield return "lasts still";
        if (occurrence.Kind == "alarm")
            yield return occurrence.Acknowledged is { } seen ? $"acknowledged at {Seconds(seen.UptimeMs)} by {occurrence.AcknowledgedBy}" : "not acknowledged";
        if (occurrence.Reset is { } reset)
            yield return $"reset at {Seconds(reset.UptimeMs)}";
        if (occurrence.FirstUp)
            yield return "first up";
        if (occurrence.SuppressedBy.Count > 0)
            yield return $"suppressed, as it follows from {string.Join(" and ", occurrence.SuppressedBy)}";
        if (occurrence.Hidden.Length > 0)
            yield return occurrence.Hidden;
    }

    private static string Seconds(long milliseconds) => (milliseconds / 1000m).ToString("0.###", CultureInfo.InvariantCulture) + " s";
}
