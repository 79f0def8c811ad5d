using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Plant.Faults;

namespace LubeController.Cli.Faults;

/// <summary>The table that the page on scripts holds.</summary>
internal sealed class MarkdownFormat : IFaultFormat
{
    /// <inheritdoc/>
    public void Write(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
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
}
