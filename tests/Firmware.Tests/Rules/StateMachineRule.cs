using System;
using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Iterators (<c>yield</c>) and asynchronous methods: what the compiler makes of them is absent there.</summary>
public sealed class StateMachineRule : IFirmwareRule
{
    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module) => module.GetTypes()
        .Where(type => type.IsNested && type.Name.StartsWith('<') && type.Name.Contains(">d__", StringComparison.Ordinal))
        .Select(type => Finding.In(
            type.DeclaringType,
            type.Name[1..type.Name.IndexOf('>', StringComparison.Ordinal)],
            "yield or async",
            "Keep the state in fields and advance it each scan"));
}
