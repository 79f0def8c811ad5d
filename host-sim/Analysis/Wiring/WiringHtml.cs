using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Net;

namespace LubeController.Analysis.Wiring;

/// <summary>
/// The matrix as one HTML page that needs nothing else: what nobody can detect first, then all of it. Headings and table
/// headers carry the structure, and every meaning is a word.
/// </summary>
public static class WiringHtml
{
    private const string Style =
        "body{font-family:sans-serif;line-height:1.4;margin:1.5rem;max-width:90rem}"
        + "table{border-collapse:collapse;margin:1rem 0}caption{text-align:left;font-weight:bold;padding:.3rem 0}"
        + "th,td{border:1px solid #666;padding:.25rem .5rem;text-align:left;vertical-align:top}thead th{background:#eee}";

    /// <summary>Writes a matrix.</summary>
    public static void Write(string plant, WiringMatrix matrix, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentNullException.ThrowIfNull(writer);
        string title = Text($"Alarm wiring: {plant}");
        writer.Write($"<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{title}</title>\n<style>{Style}</style>\n</head>\n<body>\n<main>\n<h1>{title}</h1>\n");
        writer.Write(FormattableString.Invariant($"<p>{matrix.Conditions.Count} alarms, {matrix.Faults.Count} single faults of the wiring. What the supervisory system sees was solved from the circuit, in health and then with the alarm standing.</p>\n"));
        foreach (string caution in (string[])[WiringText.Assumed, .. WiringText.Cautions])
            writer.Write($"<p>{Text(caution)}</p>\n");
        foreach (string wrong in matrix.Wrongs)
            writer.Write($"<p>{Text(WiringText.Wrong + wrong)}</p>\n");
        IReadOnlyList<WiringGroup> groups = WiringGroup.Of(matrix);
        writer.Write("<h2>What nobody can detect</h2>\n");
        WriteUnseen(matrix, groups, writer);
        writer.Write("<h2>Every alarm under every single fault</h2>\n");
        foreach (WiringGroup group in groups)
            WriteTable(Text(group.Names), group.Rows, null, writer);
        writer.Write("</main>\n</body>\n</html>\n");
    }

    private static void WriteUnseen(WiringMatrix matrix, IReadOnlyList<WiringGroup> groups, TextWriter writer)
    {
        bool any = false;
        foreach (WiringGroup group in groups)
        {
            WiringRow[] unseen = [.. group.Rows.Where(row => WiringOutcomes.IsUnseen(row.Outcome))];
            if (unseen.Length == 0)
                continue;
            any = true;
            WriteTable(Text(group.Names), unseen, matrix, writer);
        }

        if (!any)
            writer.Write("<p>Nothing: every single fault shows in health, and every alarm is told on sound wiring.</p>\n");
    }

    private static void WriteTable(string caption, IEnumerable<WiringRow> rows, WiringMatrix? measured, TextWriter writer)
    {
        string[] headers = ["Fault", "Seen in health", "Seen in alarm", "Outcome", .. measured != null ? (string[])["Would be seen with"] : []];
        writer.Write($"<table>\n<caption>{caption}</caption>\n<thead><tr>{string.Concat(headers.Select(header => $"<th scope=\"col\">{header}</th>"))}</tr></thead>\n<tbody>\n");
        foreach (WiringRow row in rows)
        {
            string[] cells =
            [
                row.InHealth.ToString(),
                row.InAlarm.ToString(),
                WiringOutcomes.Words(row.Outcome),
                .. measured != null ? (string[])[Measures(measured, row)] : [],
            ];
            writer.Write($"<tr><th scope=\"row\">{Text(row.Fault?.ToString() ?? "sound wiring")}</th>{string.Concat(cells.Select(cell => $"<td>{Text(cell)}</td>"))}</tr>\n");
        }

        writer.Write("</tbody>\n</table>\n");
    }

    private static string Measures(WiringMatrix matrix, WiringRow row) =>
        row.Outcome != WiringOutcome.NeverTold ? matrix.MeasureWords(row)
        : matrix.Wrongs.Count > 0 ? "wiring that is right in itself" : "a contact that this alarm moves, wired to an input";

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
