using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>A type named somewhere: as base, in a signature, as a local, or as an operand.</summary>
/// <param name="Owner">The type that names it.</param>
/// <param name="Member">The member that names it, or null.</param>
/// <param name="Instruction">The instruction that names it, or null.</param>
/// <param name="Type">The type named, one level of it: arrays, pointers and instances come with their elements as mentions of their own.</param>
public sealed record Mention(TypeDefinition Owner, IMemberDefinition? Member, Instruction? Instruction, TypeReference Type)
{
    /// <summary>A finding where the mention stands.</summary>
    public Finding Report(string found, string remedy) => Member is MethodDefinition method && Instruction != null
        ? Finding.At(method, Instruction, found, remedy)
        : Finding.In(Owner, Member?.Name ?? "", found, remedy);

    /// <summary>Every mention in a module; attributes are left out.</summary>
    public static IEnumerable<Mention> AllIn(ModuleDefinition module) => module.GetTypes().SelectMany(OfType);

    /// <summary>A type, and everything it is built of.</summary>
    public static IEnumerable<TypeReference> Unfold(TypeReference? type)
    {
        if (type == null)
            yield break;
        yield return type;
        var parts = new List<TypeReference>();
        if (type is TypeSpecification specification)
            parts.Add(specification.ElementType);
        if (type is GenericInstanceType instance)
            parts.AddRange(instance.GenericArguments);
        if (type is IModifierType modifier)
            parts.Add(modifier.ModifierType);
        if (type is FunctionPointerType function)
            parts.AddRange(OfSignature(function));
        foreach (TypeReference part in parts.SelectMany(Unfold))
            yield return part;
    }

    private static IEnumerable<Mention> OfType(TypeDefinition type)
    {
        IEnumerable<TypeReference?> heads = type.Interfaces.Select(one => one.InterfaceType).Prepend(type.BaseType);
        foreach (TypeReference head in heads.SelectMany(Unfold))
            yield return new Mention(type, null, null, head);
        foreach (FieldDefinition field in type.Fields)
        {
            foreach (TypeReference part in Unfold(field.FieldType))
                yield return new Mention(type, field, null, part);
        }

        foreach (Mention mention in type.Methods.SelectMany(OfMethod))
            yield return mention;
    }

    private static IEnumerable<Mention> OfMethod(MethodDefinition method)
    {
        IEnumerable<TypeReference?> outer = OfSignature(method);
        if (method.HasBody)
        {
            outer = outer.Concat(method.Body.Variables.Select(local => local.VariableType))
                .Concat(method.Body.ExceptionHandlers.Select(handler => handler.CatchType));
        }

        foreach (TypeReference part in outer.SelectMany(Unfold))
            yield return new Mention(method.DeclaringType, method, null, part);
        if (!method.HasBody)
            yield break;
        foreach (Instruction instruction in method.Body.Instructions)
        {
            foreach (TypeReference part in OfOperand(instruction.Operand).SelectMany(Unfold))
                yield return new Mention(method.DeclaringType, method, instruction, part);
        }
    }

    private static IEnumerable<TypeReference> OfOperand(object? operand) => operand switch
    {
        TypeReference type => [type],
        FieldReference field => [field.DeclaringType, field.FieldType],
        GenericInstanceMethod instance => instance.GenericArguments.Append(instance.DeclaringType).Concat(OfSignature(instance)),
        MethodReference method => OfSignature(method).Prepend(method.DeclaringType),
        CallSite site => OfSignature(site),
        _ => [],
    };

    private static IEnumerable<TypeReference> OfSignature(IMethodSignature signature) =>
        signature.Parameters.Select(parameter => parameter.ParameterType).Prepend(signature.ReturnType);
}
