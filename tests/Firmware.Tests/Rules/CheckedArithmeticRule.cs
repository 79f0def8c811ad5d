using System;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Checked arithmetic: the interpreter wraps silently.</summary>
public sealed class CheckedArithmeticRule : InstructionRule
{
    /// <inheritdoc/>
    protected override string Remedy => "Compare before the operation, or saturate";

    /// <inheritdoc/>
    protected override string? Judge(MethodDefinition method, Instruction instruction) =>
        instruction.OpCode.Name.Contains(".ovf", StringComparison.Ordinal) ? "checked arithmetic " + instruction.OpCode.Name : null;
}
