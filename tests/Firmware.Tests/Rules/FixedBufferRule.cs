using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Fixed buffers in structs: they throw on the interpreter.</summary>
public sealed class FixedBufferRule : IFirmwareRule
{
    private const string Attribute = "System.Runtime.CompilerServices.FixedBufferAttribute";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) => module.GetTypes()
        .SelectMany(type => type.Fields)
        .Where(IsFixedBuffer)
        .Select(field => Finding.In(field.DeclaringType, field.Name, "fixed buffer", "Use an array field that is made once"));

    private static bool IsFixedBuffer(FieldDefinition field) =>
        field.CustomAttributes.Any(attribute => attribute.AttributeType.FullName == Attribute)
        || field.FieldType.Name.EndsWith("e__FixedBuffer", System.StringComparison.Ordinal);
}
