using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Scan;

/// <summary>
/// Refuses whatever makes an object, or leaves the firmware, in code that a method can reach. Calls into the core library
/// are refused unless <see cref="CoreLibraryCalls"/> knows them not to allocate: string concatenation, formatting,
/// enumerators and the rest need no list of their own.
/// </summary>
/// <param name="graph">All firmware assemblies.</param>
public sealed class AllocationRule(CallGraph graph)
{
    /// <summary>Everything refused that a method can reach, with the way to it.</summary>
    /// <exception cref="InvalidOperationException">The method is not there, or has no body: nothing was looked at.</exception>
    public IEnumerable<Finding> Check(string type, string method) => Roots(type, method)
        .SelectMany(root => graph.ReachableFrom(root, throughNew: false))
        .SelectMany(InMethod);

    /// <summary>The methods that a method can reach, itself among them.</summary>
    public IReadOnlyList<CallPath> Reachable(string type, string method) =>
        Roots(type, method).SelectMany(root => graph.ReachableFrom(root, throughNew: false)).ToList();

    private List<MethodDefinition> Roots(string type, string method)
    {
        List<MethodDefinition> roots = graph.Find(type)?.Methods.Where(one => one.Name == method && one.HasBody).ToList() ?? [];
        return roots.Count > 0 ? roots : throw new InvalidOperationException($"{type}.{method} was not found, so nothing could be followed from it; name the method that starts a scan.");
    }

    private IEnumerable<Finding> InMethod(CallPath path)
    {
        foreach (Instruction instruction in path.Method.Body.Instructions)
        {
            if (Judge(instruction) is (string found, string remedy))
                yield return Finding.At(path.Method, instruction, $"{found}, reached by {path}", remedy);
        }
    }

    private (string Found, string Remedy)? Judge(Instruction instruction) => instruction.OpCode.Code switch
    {
        Code.Newobj => ("new " + ((MethodReference)instruction.Operand).DeclaringType.FullName, "Make it once, in a constructor"),
        Code.Newarr => ("new array of " + ((TypeReference)instruction.Operand).FullName, "Make it once, in a constructor; params makes one too"),
        Code.Box => ("boxing of " + ((TypeReference)instruction.Operand).FullName, "Keep to the value's own type"),
        Code.Ldstr => ("a string literal, which becomes an object on the interpreter", "Use a number, and let the bench name it"),
        Code.Throw or Code.Rethrow => ("an exception thrown", "Answer with a value, or raise an alarm"),
        Code.Calli => ("a call through a function pointer, which cannot be followed", "Call a method or an interface"),
        Code.Call or Code.Callvirt => JudgeCall((MethodReference)instruction.Operand),
        _ => null,
    };

    private (string Found, string Remedy)? JudgeCall(MethodReference method)
    {
        if (graph.IsInside(method) || CoreLibraryCalls.AllocateNothing(method))
            return null;
        return ("a call out of the firmware, " + Il.Short(method), "Write it out; if it is known not to allocate, add it to " + nameof(CoreLibraryCalls));
    }
}
