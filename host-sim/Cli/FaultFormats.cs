using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using LubeController.Plant.Faults;
using LubeController.Scripts.Records;
using LubeController.Scripts.Steps;

namespace LubeController.Cli;

/// <summary>Writes faults in one form.</summary>
/// <param name="rows">The faults.</param>
/// <param name="withParts">Whether a plant was asked about, so that parts have names.</param>
/// <param name="output">Takes the list.</param>
internal delegate void FaultFormat(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output);

/// <summary>The forms in which faults are listed. In CSV and JSON, numbers are in the unit beside them.</summary>
internal static class FaultFormats
{
    private static readonly string[] ParameterColumns = ["name", "meaning", "unit", "minimum", "maximum", "default", "harmless"];

    /// <summary>All forms, the usual one first.</summary>
    public static IReadOnlyDictionary<string, FaultFormat> ByName { get; } = new Dictionary<string, FaultFormat>
    {
        ["text"] = WriteText,
        ["csv"] = WriteCsv,
        ["json"] = (rows, withParts, output) => ReadableJson.WriteArray(rows, (row, json) => WriteJson(row, withParts, json), output),
        ["markdown"] = WriteMarkdown,
    };

    private static void WriteText(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
    {
        foreach (FaultRow row in rows)
        {
            output.WriteLine($"{row.Fault.Name}: {row.Fault.Place}, {row.Manner}");
            if (withParts && row.PartText.Length > 0)
                output.WriteLine($"  parts      {row.PartList}");
            else if (row.PartText.Length > 0)
                output.WriteLine($"  part       {row.PartText}");
            if (row.Fault.Parameter is { } magnitude)
                output.WriteLine($"  magnitude  {FaultRow.Describe(magnitude)}");
            if (row.Fault.Second is { } second)
                output.WriteLine($"  {second.Name,-9}  {FaultRow.Describe(second)}");
            output.WriteLine($"  changes    {row.Fault.Effect}");
            output.WriteLine($"  noticed    {row.Fault.Noticed}");
            output.WriteLine($"  needs      {row.Fault.Needs}");
            output.WriteLine($"  heals      {row.Heals}. {row.Fault.HealingNote}");
        }
    }

    private static void WriteMarkdown(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
    {
        output.WriteLine("| fault | where, how | `part` | magnitude | what changes | what a person notices | takes effect with | healing |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (FaultRow row in rows)
        {
            Fault fault = row.Fault;
            string part = withParts ? row.PartList : row.PartText;
            string magnitude = string.Join("; ", fault.Parameters.Select((parameter, index) => (index == 0 ? "" : $"with `{parameter.Name}`: ") + FaultRow.Describe(parameter)));
            output.WriteLine($"| `{fault.Name}` | {fault.Place}: {row.Manner} | {part} | {magnitude} | {fault.Effect} | {fault.Noticed} | {fault.Needs} | {fault.HealingNote} |");
        }
    }

    // Quoted as in RFC 4180.
    private static void WriteCsv(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
    {
        IEnumerable<string> columns =
        [
            "name", "part", "place", "manner",
            .. ParameterColumns.Select(column => "magnitude-" + column),
            .. ParameterColumns.Select(column => "second-" + column),
            "changes", "noticed", "needs", "heals", "healing", "parts",
        ];
        output.WriteLine(string.Join(',', columns));
        foreach (FaultRow row in rows)
        {
            Fault fault = row.Fault;
            IEnumerable<string> cells =
            [
                fault.Name, row.PartText, fault.Place, row.Manner,
                .. Cells(fault.Parameter),
                .. Cells(fault.Second),
                fault.Effect, fault.Noticed, fault.Needs, row.Heals, fault.HealingNote, row.PartList,
            ];
            output.WriteLine(string.Join(',', cells.Select(CsvCell.Quoted)));
        }
    }

    private static string[] Cells(FaultParameter? parameter)
    {
        if (parameter == null)
            return [.. ParameterColumns.Select(_ => "")];
        return
        [
            parameter.Name, parameter.Meaning, BenchFaults.FamilyOf(parameter).UsualUnit,
            Number(parameter.Minimum), Number(parameter.Maximum), Number(parameter.Default),
            parameter.Harmless is { } harmless ? Number(harmless) : "",
        ];

        string Number(double si) => FaultRow.Usual(parameter, si).ToString("R", CultureInfo.InvariantCulture);
    }

    private static void WriteJson(FaultRow row, bool withParts, Utf8JsonWriter json)
    {
        Fault fault = row.Fault;
        json.WriteStartObject();
        json.WriteString("name", fault.Name);
        json.WriteString("part", row.PartText);
        json.WriteString("place", fault.Place);
        json.WriteString("manner", row.Manner);
        json.WriteBoolean("gradual", fault.Gradual);
        json.WriteStartArray("parameters");
        foreach (FaultParameter parameter in fault.Parameters)
            WriteJson(parameter, json);
        json.WriteEndArray();
        json.WriteString("changes", fault.Effect);
        json.WriteString("noticed", fault.Noticed);
        json.WriteString("needs", fault.Needs);
        json.WriteString("heals", row.Heals);
        json.WriteString("healing", fault.HealingNote);
        if (withParts)
        {
            json.WriteStartArray("parts");
            foreach (string part in row.Parts)
                json.WriteStringValue(part);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void WriteJson(FaultParameter parameter, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", parameter.Name);
        json.WriteString("meaning", parameter.Meaning);
        json.WriteString("unit", BenchFaults.FamilyOf(parameter).UsualUnit);
        json.WriteNumber("minimum", FaultRow.Usual(parameter, parameter.Minimum));
        json.WriteNumber("maximum", FaultRow.Usual(parameter, parameter.Maximum));
        json.WriteNumber("default", FaultRow.Usual(parameter, parameter.Default));
        if (parameter.Harmless is { } harmless)
            json.WriteNumber("harmless", FaultRow.Usual(parameter, harmless));
        json.WriteEndObject();
    }
}
