using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Members that work on the microcontroller and fail on the desktop, where the same DLL must run too.</summary>
public sealed class DifferingMembersRule : IFirmwareRule
{
    private const string InitModifier = "System.Runtime.CompilerServices.IsExternalInit";
    private const string Remedy = "Both runtimes must run the same DLL: do without it";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) => Types(module)
        .Concat(Il.Instructions(module).SelectMany(Members))
        .Concat(module.GetTypes().SelectMany(type => type.Methods).SelectMany(InitSetters));

    private static IEnumerable<Finding> Types(ModuleDefinition module) => Mention.AllIn(module)
        .Where(mention => mention.Type.FullName is "System.Diagnostics.Debug" or "System.SpanByte")
        .Select(mention => mention.Report(mention.Type.FullName + " differs between the two runtimes", Remedy))
        .DistinctBy(finding => (finding.Type, finding.Member, finding.Found));

    private static IEnumerable<Finding> Members((MethodDefinition Method, Instruction Instruction) at)
    {
        if (at.Instruction.Operand is not MemberReference member || member.DeclaringType == null)
            yield break;
        if (Differs(member.DeclaringType.FullName, member.Name))
            yield return Finding.At(at.Method, at.Instruction, Il.Short(member) + " differs between the two runtimes", Remedy);
        if (member is MethodReference called && called.Module == at.Method.Module && called is not MethodDefinition
            && Il.IsModifiedBy(called.ReturnType, InitModifier))
        {
            yield return Finding.At(at.Method, at.Instruction, "init setter of another assembly, " + Il.Short(member), "Take the value through the constructor");
        }
    }

    private static bool Differs(string type, string member) => type switch
    {
        "System.TimeSpan" => member is "FromHours" or "FromDays",
        "System.DateTime" => member.Contains("Unix", StringComparison.Ordinal),
        "System.Char" => member is "ToUpper" or "ToLower",
        "System.BitConverter" => member is "IsLittleEndian" or "get_IsLittleEndian",
        _ => false,
    };

    private static IEnumerable<Finding> InitSetters(MethodDefinition method)
    {
        bool seen = method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;
        for (TypeDefinition? type = method.DeclaringType; type != null; type = type.DeclaringType)
            seen &= type.IsPublic || type.IsNestedPublic || type.IsNestedFamily || type.IsNestedFamilyOrAssembly;
        if (seen && Il.IsModifiedBy(method.ReturnType, InitModifier))
            yield return Finding.In(method.DeclaringType, method.Name, "init setter seen from outside", "Take the value through the constructor");
    }
}
