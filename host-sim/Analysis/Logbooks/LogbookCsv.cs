using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using LubeController.Scripts.Records;

namespace LubeController.Analysis.Logbooks;

/// <summary>A logbook for spreadsheets: a line for each occurrence, comma-separated, quoted and ended by CR LF as in RFC 4180. Times are seconds powered.</summary>
public static class LogbookCsv
{
    private static readonly string[] Columns =
    [
        "number", "kind", "what", "detail", "by", "began-s", "began-at", "lasted-s", "condition-ended-s",
        "acknowledged-s", "acknowledged-by", "reset-s", "first-up", "suppressed-by", "hidden",
    ];

    /// <summary>Writes it.</summary>
    public static void Write(IEnumerable<LogOccurrence> occurrences, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(occurrences);
        ArgumentNullException.ThrowIfNull(output);
        Line(Columns, output);
        foreach (LogOccurrence one in occurrences)
        {
            Line(
                [
                    one.Number.ToString(CultureInfo.InvariantCulture), one.Kind, one.What, one.Detail, one.By, Seconds(one.Began.UptimeMs), LogbookTimes.At(one.Began),
                    Seconds(one.LastedMs), Seconds(one.ConditionEnded?.UptimeMs), Seconds(one.Acknowledged?.UptimeMs), one.AcknowledgedBy,
                    Seconds(one.Reset?.UptimeMs), one.FirstUp ? "yes" : "", string.Join(' ', one.SuppressedBy), one.Hidden,
                ],
                output);
        }
    }

    private static string Seconds(long? milliseconds) => milliseconds is { } time ? (time / 1000m).ToString("0.###", CultureInfo.InvariantCulture) : "";

    private static void Line(IEnumerable<string> cells, TextWriter output)
    {
        output.Write(string.Join(',', cells.Select(CsvCell.Quoted)));
        output.Write("\r\n");
    }
}
