using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Records, of either kind: they print themselves by means that are absent there.</summary>
public sealed class RecordRule : IFirmwareRule
{
    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) => module.GetTypes()
        .Where(type => type.Methods.Any(method => method.Name == "<Clone>$" || IsRecordPrinter(method)))
        .Select(type => Finding.In(type, "", "record", "Write a class"));

    private static bool IsRecordPrinter(MethodDefinition method) => method.Name == "PrintMembers"
        && method.Parameters.Count == 1
        && method.Parameters[0].ParameterType.FullName == "System.Text.StringBuilder";
}
