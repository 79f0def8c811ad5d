using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>References to anything but the core library and the firmware's own assemblies.</summary>
/// <param name="allowed">Names of the assemblies that may be referenced.</param>
public sealed class ReferencesRule(IReadOnlyCollection<string> allowed) : IFirmwareRule
{
    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        IEnumerable<string> assemblies = module.AssemblyReferences.Select(reference => reference.Name).Where(name => !allowed.Contains(name));
        IEnumerable<string> native = module.ModuleReferences.Select(reference => reference.Name);
        return assemblies.Concat(native)
            .Select(name => Finding.In(module, "reference to " + name, "Allowed are " + string.Join(", ", allowed)));
    }
}
