using System.Collections.Generic;
using System.IO;

namespace LubeController.Cli.Faults;

/// <summary>For people at a terminal.</summary>
internal sealed class TextFormat : IFaultFormat
{
    /// <inheritdoc/>
    public void Write(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output)
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
}
