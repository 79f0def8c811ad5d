using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>
/// A static initialiser that reads a static field of another class, itself or through what it calls: on the interpreter
/// that field may still hold its default value.
/// </summary>
public sealed class StaticInitialiserRule : IFirmwareRule
{
    private const string Remedy = "Make it a constant, keep both in one class, or make the object in the constructor that needs it";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        var graph = new CallGraph(FirmwareModules.All.Append(module).Distinct().ToList());
        return module.GetTypes()
            .SelectMany(type => type.Methods)
            .Where(method => method.IsConstructor && method.IsStatic)
            .SelectMany(initialiser => ForeignReads(graph, initialiser));
    }

    private static IEnumerable<Finding> ForeignReads(CallGraph graph, MethodDefinition initialiser)
    {
        foreach (CallPath path in graph.ReachableFrom(initialiser, throughNew: true))
        {
            foreach (Instruction instruction in path.Method.Body.Instructions)
            {
                if (instruction.OpCode.Code is not (Code.Ldsfld or Code.Ldsflda))
                    continue;
                var field = (FieldReference)instruction.Operand;
                if (field.DeclaringType.FullName != initialiser.DeclaringType.FullName)
                {
                    string found = $"the static initialiser of {initialiser.DeclaringType.FullName} reads {Il.Short(field)} of another class, by way of {path}";
                    yield return Finding.At(path.Method, instruction, found, Remedy);
                }
            }
        }
    }
}
