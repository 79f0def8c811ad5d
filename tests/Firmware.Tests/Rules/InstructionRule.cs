using System.Collections.Generic;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>A rule that looks at one instruction at a time.</summary>
public abstract class InstructionRule : IFirmwareRule
{
    /// <summary>What to write instead.</summary>
    protected abstract string Remedy { get; }

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        foreach ((MethodDefinition method, Instruction instruction) in Il.Instructions(module))
        {
            string? found = Judge(method, instruction);
            if (found != null)
                yield return Finding.At(method, instruction, found, Remedy);
        }
    }

    /// <summary>What is wrong with an instruction, or null.</summary>
    protected abstract string? Judge(MethodDefinition method, Instruction instruction);
}
