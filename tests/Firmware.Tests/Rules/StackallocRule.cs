using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Memory taken from the stack: it throws on the interpreter.</summary>
public sealed class StackallocRule : InstructionRule
{
    /// <inheritdoc/>
    protected override string Remedy => "Use an array field that is made once";

    /// <inheritdoc/>
    protected override string? Judge(MethodDefinition method, Instruction instruction) =>
        instruction.OpCode.Code == Code.Localloc ? "stackalloc" : null;
}
