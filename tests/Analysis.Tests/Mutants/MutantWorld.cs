using System;
using System.IO;
using System.Reflection;
using System.Runtime.Loader;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>
/// The bench once more, beside the one that runs, with another build of the core in it: every assembly of ours is loaded anew,
/// so that all of them see that core; what is not ours is shared.
/// </summary>
internal sealed class MutantWorld(byte[] core) : AssemblyLoadContext("a mutant", isCollectible: true)
{
    private const string Ours = "LubeController.";

    /// <summary>Calls a static method of this assembly, there, with text in and out.</summary>
    public string Call(Type type, string method, string argument)
    {
        Assembly assembly = LoadFromAssemblyName(type.Assembly.GetName());
        MethodInfo found = assembly.GetType(type.FullName!)!.GetMethod(method, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)!;
        return (string)found.Invoke(null, [argument])!;
    }

    protected override Assembly? Load(AssemblyName assemblyName)
    {
        if (assemblyName.Name is not { } name || !name.StartsWith(Ours, StringComparison.Ordinal))
            return null;
        if (name == "LubeController.Core")
        {
            using var stream = new MemoryStream(core);
            return LoadFromStream(stream);
        }

        return LoadFromAssemblyPath(Path.Combine(AppContext.BaseDirectory, name + ".dll"));
    }
}
