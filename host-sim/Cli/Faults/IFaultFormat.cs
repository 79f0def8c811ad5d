using System.Collections.Generic;
using System.IO;

namespace LubeController.Cli.Faults;

/// <summary>A form in which faults are listed.</summary>
internal interface IFaultFormat
{
    /// <summary>Writes the list.</summary>
    /// <param name="rows">The faults.</param>
    /// <param name="withParts">Whether a plant was asked about, so that parts have names.</param>
    /// <param name="output">Takes the list.</param>
    void Write(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output);
}
