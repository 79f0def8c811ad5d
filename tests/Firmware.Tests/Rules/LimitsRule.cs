using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>What an image can hold: 64 KB of IL in an assembly, 255 methods of one kind (virtual, instance, static) in a type.</summary>
public sealed class LimitsRule : IFirmwareRule
{
    /// <summary>IL that an assembly must stay below, bytes: offsets have sixteen bits.</summary>
    public const int IlBytes = 64 * 1024;

    /// <summary>Most methods of one kind.</summary>
    public const int MethodsOfOneKind = 255;

    /// <summary>IL of a module, bytes.</summary>
    public static int IlOf(ModuleDefinition module) => Il.Bodies(module).Sum(method => method.Body.CodeSize);

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        int bytes = IlOf(module);
        if (bytes >= IlBytes)
            yield return Finding.In(module, $"{bytes} bytes of IL; fewer than {IlBytes} are allowed", "Move code to another assembly");
        foreach (TypeDefinition type in module.GetTypes())
        {
            foreach (IGrouping<string, MethodDefinition> kind in type.Methods.GroupBy(KindOf).Where(kind => kind.Count() > MethodsOfOneKind))
                yield return Finding.In(type, "", $"{kind.Count()} {kind.Key} methods; at most {MethodsOfOneKind} are allowed", "Split the type");
        }
    }

    private static string KindOf(MethodDefinition method) => method.IsStatic ? "static" : method.IsVirtual ? "virtual" : "instance";
}
