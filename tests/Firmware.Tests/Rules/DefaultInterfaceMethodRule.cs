using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Interface methods with a body: they throw on the interpreter.</summary>
public sealed class DefaultInterfaceMethodRule : IFirmwareRule
{
    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) => module.GetTypes()
        .Where(type => type.IsInterface)
        .SelectMany(type => type.Methods)
        .Where(method => method.HasBody)
        .Select(method => Finding.In(method.DeclaringType, method.Name, "interface method with a body", "Move the body to a class"));
}
