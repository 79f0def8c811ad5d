using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Volatile fields and accesses: the interpreter has none.</summary>
public sealed class VolatileRule : IFirmwareRule
{
    private const string Remedy = "Let one thread own the data";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        IEnumerable<Finding> fields = module.GetTypes()
            .SelectMany(type => type.Fields)
            .Where(field => Il.IsModifiedBy(field.FieldType, "System.Runtime.CompilerServices.IsVolatile"))
            .Select(field => Finding.In(field.DeclaringType, field.Name, "volatile field", Remedy));
        IEnumerable<Finding> accesses = Il.Instructions(module)
            .Where(at => at.Instruction.OpCode.Code == Code.Volatile)
            .Select(at => Finding.At(at.Method, at.Instruction, "volatile access", Remedy));
        return fields.Concat(accesses);
    }
}
