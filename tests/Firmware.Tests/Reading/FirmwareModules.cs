using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>
/// The firmware's own DLLs as they lie beside the tests, read as metadata, with the microcontroller's core library
/// behind their reference to mscorlib.
/// </summary>
public static class FirmwareModules
{
    /// <summary>The assemblies that are deployed.</summary>
    public static readonly string[] Names = ["LubeController.Core", "LubeController.Board", "LubeController.RuleTemplate"];

    private static readonly MicrocontrollerResolver Resolver = new();

    /// <summary>The microcontroller's core library.</summary>
    public static ModuleDefinition CoreLibrary { get; } =
        ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, "microcontroller", "mscorlib.dll"));

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ModuleDefinition> All { get; } = Names.Select(Read).ToList();

    /// <summary>This test assembly, whose samples show what the rules refuse.</summary>
    public static ModuleDefinition Samples { get; } = ModuleDefinition.ReadModule(typeof(FirmwareModules).Assembly.Location);

    /// <summary>One of them, by name.</summary>
    public static ModuleDefinition Named(string name) => All.Single(module => module.Assembly.Name.Name == name);

    private static ModuleDefinition Read(string name) => Resolver.Resolve(new AssemblyNameReference(name, null)).MainModule;

    private sealed class MicrocontrollerResolver : BaseAssemblyResolver
    {
        private readonly Dictionary<string, AssemblyDefinition> _known = [];

        public override AssemblyDefinition Resolve(AssemblyNameReference name)
        {
            if (name.Name == "mscorlib")
                return CoreLibrary.Assembly;
            if (_known.TryGetValue(name.Name, out AssemblyDefinition? known))
                return known;
            string path = Path.Combine(AppContext.BaseDirectory, name.Name + ".dll");
            var read = AssemblyDefinition.ReadAssembly(path, new ReaderParameters { AssemblyResolver = this });
            _known.Add(name.Name, read);
            return read;
        }
    }
}
