using System;
using System.IO;
using System.Linq;
using LubeController.Scripts.Records;

namespace LubeController.Analysis.Wiring;

/// <summary>The matrix as comma-separated values (RFC 4180, lines ended by LF): a heading, then one alarm under one fault a line.</summary>
public static class WiringCsv
{
    /// <summary>The first line.</summary>
    public const string Heading = "alarm,category,fault,part,in_health,in_alarm,outcome,detectable,would_be_seen_with";

    /// <summary>Writes a matrix.</summary>
    public static void Write(WiringMatrix matrix, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write(Heading + "\n");
        foreach (WiringRow row in matrix.Rows)
        {
            bool unseen = WiringOutcomes.IsUnseen(row.Outcome);
            string[] fields =
            [
                row.Condition.Name,
                row.Condition.Category,
                row.Fault?.Name ?? "none",
                row.Fault?.Part ?? "",
                row.InHealth.ToString(),
                row.InAlarm.ToString(),
                WiringOutcomes.Words(row.Outcome),
                unseen ? "no" : "yes",
                unseen && row.Fault != null ? matrix.MeasureWords(row) : "",
            ];
            writer.Write(string.Join(',', fields.Select(CsvCell.Quoted)) + "\n");
        }
    }
}
