using System;
using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>
/// What may be called, over several modules: a virtual call leads to every override, an interface call to every
/// implementer, a delegate call to every method that was ever put into a delegate of that type. It errs towards more.
/// Static initialisers are left out: they run once, not where their class is first used.
/// </summary>
public sealed class CallGraph
{
    private readonly HashSet<ModuleDefinition> _modules;
    private readonly List<TypeDefinition> _types;
    private readonly ILookup<string, MethodDefinition> _delegateTargets;

    /// <summary>Makes a graph over some modules; whatever lies in others is outside.</summary>
    public CallGraph(IReadOnlyCollection<ModuleDefinition> modules)
    {
        _modules = [.. modules];
        _types = modules.SelectMany(module => module.GetTypes()).ToList();
        _delegateTargets = modules.SelectMany(Il.Instructions)
            .Where(at => IsFunctionLoad(at.Instruction) && at.Instruction.Next?.OpCode.Code == Code.Newobj)
            .SelectMany(at => Callees((MethodReference)at.Instruction.Operand, at.Instruction.OpCode.Code == Code.Ldvirtftn)
                .Select(target => (type: ((MethodReference)at.Instruction.Next.Operand).DeclaringType.FullName, target)))
            .ToLookup(pair => pair.type, pair => pair.target);
    }

    /// <summary>The type of a full name, or null.</summary>
    public TypeDefinition? Find(string fullName) => _types.FirstOrDefault(type => type.FullName == fullName);

    /// <summary>Everything that can be reached, the root first.</summary>
    /// <param name="root">Where to start; it has a body.</param>
    /// <param name="throughNew">Whether the constructor behind a <c>newobj</c> is followed too.</param>
    public IEnumerable<CallPath> ReachableFrom(MethodDefinition root, bool throughNew)
    {
        var seen = new HashSet<MethodDefinition> { root };
        var waiting = new Queue<CallPath>([new CallPath(root, null)]);
        while (waiting.TryDequeue(out CallPath? path))
        {
            yield return path;
            foreach (MethodDefinition target in path.Method.Body.Instructions
                .Where(one => throughNew || one.OpCode.Code != Code.Newobj)
                .SelectMany(Targets)
                .Where(seen.Add))
                waiting.Enqueue(new CallPath(target, path));
        }
    }

    /// <summary>The methods with a body, inside the modules, that an instruction may call or hand on to be called.</summary>
    public IEnumerable<MethodDefinition> Targets(Instruction instruction)
    {
        if (instruction.Operand is not MethodReference method || instruction.OpCode.Code == Code.Ldtoken)
            return [];
        bool isVirtual = instruction.OpCode.Code is Code.Callvirt or Code.Ldvirtftn;
        return method.Name == "Invoke" ? Callees(method, isVirtual).Concat(_delegateTargets[method.DeclaringType.FullName]) : Callees(method, isVirtual);
    }

    /// <summary>Whether a method lies in one of the modules.</summary>
    public bool IsInside(MethodReference method) => method.Resolve() is { } found && _modules.Contains(found.Module);

    private static bool IsFunctionLoad(Instruction instruction) =>
        instruction.OpCode.Code is Code.Ldftn or Code.Ldvirtftn;

    private IEnumerable<MethodDefinition> Callees(MethodReference method, bool isVirtual)
    {
        MethodDefinition? declared = method.Resolve();
        if (declared == null)
            return [];
        IEnumerable<MethodDefinition> all = isVirtual && declared.IsVirtual ? Implementations(declared).Prepend(declared) : [declared];
        return all.Where(one => one.HasBody && _modules.Contains(one.Module)).Distinct();
    }

    private IEnumerable<MethodDefinition> Implementations(MethodDefinition declared)
    {
        string owner = declared.DeclaringType.FullName;
        foreach (TypeDefinition type in _types.Where(type => DerivesFrom(type, owner)))
        {
            // An implementer may take its method over from a base that knows nothing of the interface.
            IEnumerable<TypeDefinition> places = declared.DeclaringType.IsInterface ? Lineage(type) : [type];
            foreach (MethodDefinition method in places.SelectMany(place => place.Methods).Where(method => Answers(method, declared)))
                yield return method;
        }
    }

    private static bool Answers(MethodDefinition method, MethodDefinition declared) =>
        method.Overrides.Any(one => one.FullName == declared.FullName)
        || (method.IsVirtual && method.Name == declared.Name
            && method.Parameters.Select(one => one.ParameterType.FullName)
                .SequenceEqual(declared.Parameters.Select(one => one.ParameterType.FullName), StringComparer.Ordinal));

    private static bool DerivesFrom(TypeDefinition type, string ancestor) => Lineage(type)
        .Any(one => one.FullName == ancestor || one.Interfaces.Any(face => Inherits(face.InterfaceType, ancestor)));

    private static bool Inherits(TypeReference face, string ancestor) => face.GetElementType().FullName == ancestor
        || (face.Resolve()?.Interfaces.Any(parent => Inherits(parent.InterfaceType, ancestor)) ?? false);

    private static IEnumerable<TypeDefinition> Lineage(TypeDefinition? type)
    {
        for (; type != null; type = type.BaseType?.Resolve())
            yield return type;
    }
}
