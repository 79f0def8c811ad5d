using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>
/// Structs held or handed over by value, enumerations and primitives excepted: on the interpreter a copy is an alias,
/// and a struct local allocates. Refused are struct locals, parameters and results, and whatever copies one.
/// </summary>
public sealed class StructRule : IFirmwareRule
{
    private const string Remedy = "Use a class that is made once";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) =>
        module.GetTypes().SelectMany(type => type.Methods).SelectMany(OfSignature)
            .Concat(Il.Bodies(module).SelectMany(Locals))
            .Concat(Il.Instructions(module).SelectMany(Copies))
            .DistinctBy(finding => (finding.Type, finding.Member, finding.Found));

    private static IEnumerable<Finding> OfSignature(MethodDefinition method)
    {
        foreach (ParameterDefinition parameter in method.Parameters.Where(one => Il.IsStruct(one.ParameterType)))
            yield return Finding.In(method.DeclaringType, method.Name, "struct parameter of type " + parameter.ParameterType.FullName, Remedy);
        if (Il.IsStruct(method.ReturnType))
            yield return Finding.In(method.DeclaringType, method.Name, "struct result of type " + method.ReturnType.FullName, Remedy);
    }

    private static IEnumerable<Finding> Locals(MethodDefinition method) => method.Body.Variables
        .Where(local => Il.IsStruct(local.VariableType))
        .Select(local => Finding.In(method.DeclaringType, method.Name, "struct local of type " + local.VariableType.FullName, Remedy));

    private static IEnumerable<Finding> Copies((MethodDefinition Method, Instruction Instruction) at)
    {
        TypeReference? copied = at.Instruction.OpCode.Code switch
        {
            Code.Ldobj or Code.Stobj or Code.Cpobj
                or Code.Ldelem_Any or Code.Stelem_Any => (TypeReference)at.Instruction.Operand,
            Code.Ldfld or Code.Ldsfld or Code.Stfld
                or Code.Stsfld => ((FieldReference)at.Instruction.Operand).FieldType,
            _ => null,
        };
        if (copied != null && Il.IsStruct(copied))
            yield return Finding.At(at.Method, at.Instruction, $"struct copy by {at.Instruction.OpCode.Name} of {copied.FullName}", Remedy);
    }
}
