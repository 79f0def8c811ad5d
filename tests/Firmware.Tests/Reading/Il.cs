using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>Walks the methods and instructions of a module, nested and compiler-made types among them.</summary>
public static class Il
{
    /// <summary>Every method that has a body.</summary>
    public static IEnumerable<MethodDefinition> Bodies(ModuleDefinition module) =>
        module.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody);

    /// <summary>Every instruction with its method.</summary>
    public static IEnumerable<(MethodDefinition Method, Instruction Instruction)> Instructions(ModuleDefinition module) =>
        Bodies(module).SelectMany(method => method.Body.Instructions.Select(instruction => (method, instruction)));

    /// <summary>Type and member without return type and assembly.</summary>
    public static string Short(MemberReference member) =>
        member.DeclaringType == null ? member.FullName : member.DeclaringType.FullName + "." + member.Name;

    /// <summary>Whether a by-value type is neither a primitive nor an enumeration; what cannot be resolved counts as a struct.</summary>
    public static bool IsStruct(TypeReference type)
    {
        while (type is IModifierType or PinnedType or SentinelType)
            type = ((TypeSpecification)type).ElementType;
        return type.IsValueType && !type.IsPrimitive && type.MetadataType != MetadataType.Void && type.Resolve()?.IsEnum != true;
    }

    /// <summary>Whether a type carries a required modifier of a name.</summary>
    public static bool IsModifiedBy(TypeReference type, string modifier)
    {
        for (; type is TypeSpecification specification; type = specification.ElementType)
        {
            if (type is RequiredModifierType required && required.ModifierType.FullName == modifier)
                return true;
        }

        return false;
    }
}
