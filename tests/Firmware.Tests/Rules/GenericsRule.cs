using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Generic types and methods, made or used: the interpreter crashes, or the assembly does not load.</summary>
public sealed class GenericsRule : MentionRule
{
    private const string Remedy = "Write a plain class, interface or delegate for the one type that is needed";

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ModuleDefinition module)
    {
        foreach (TypeDefinition type in module.GetTypes())
        {
            if (type.HasGenericParameters)
                yield return Finding.In(type, "", "generic type", Remedy);
            foreach (MethodDefinition method in type.Methods.Where(method => method.HasGenericParameters))
                yield return Finding.In(type, method.Name, "generic method", Remedy);
        }

        foreach (Finding finding in base.Check(module).Concat(GenericCalls(module)))
            yield return finding;
    }

    /// <inheritdoc/>
    protected override (string Found, string Remedy)? Judge(TypeReference type)
    {
        if (type is not GenericInstanceType)
            return null;
        return type.FullName.StartsWith("System.Nullable`1", System.StringComparison.Ordinal)
            ? ("nullable value " + type.FullName, "Keep the value and a bool beside it")
            : ("generic " + type.FullName, Remedy);
    }

    private static IEnumerable<Finding> GenericCalls(ModuleDefinition module) => Il.Instructions(module)
        .Where(pair => pair.Instruction.Operand is GenericInstanceMethod)
        .Select(pair => Finding.At(
            pair.Method,
            pair.Instruction,
            "generic method " + Il.Short((GenericInstanceMethod)pair.Instruction.Operand),
            Remedy));
}
