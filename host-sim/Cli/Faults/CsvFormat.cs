using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using LubeController.Plant.Faults;
using LubeController.Scripts.Records;
using LubeController.Scripts.Running;

namespace LubeController.Cli.Faults;

/// <summary>For spreadsheets: one line for each fault, comma-separated, quoted as in RFC 4180. Numbers are in the unit beside them.</summary>
internal sealed class CsvFormat : IFaultFormat
{
    private static readonly string[] ParameterColumns = ["name", "meaning", "unit", "minimum", "maximum", "default", "harmless"];

    /// <inheritdoc/>
    public void Write(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
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
}
