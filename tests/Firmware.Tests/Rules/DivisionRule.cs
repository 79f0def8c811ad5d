using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>
/// Division and remainder: by zero, or the smallest number by -1, is a processor fault there. A divisor must be a
/// constant other than 0 and -1 standing right before the operation, or the operation must stand in the one class that
/// guards every divisor, which has a test of its own.
/// </summary>
/// <param name="guard">Full name of that class.</param>
public sealed class DivisionRule(string guard) : InstructionRule
{
    /// <inheritdoc/>
    protected override string Remedy => $"Divide by a constant other than 0 and -1, or call {guard}";

    /// <inheritdoc/>
    protected override string? Judge(MethodDefinition method, Instruction instruction)
    {
        bool divides = instruction.OpCode.Code is Code.Div or Code.Div_Un
            or Code.Rem or Code.Rem_Un;
        return divides && method.DeclaringType.FullName != guard && !HasSafeDivisor(method, instruction)
            ? instruction.OpCode.Name + " by a divisor that is not guarded"
            : null;
    }

    /// <summary>A jump to between the constant and the operation would bring another divisor, so none may land there.</summary>
    private static bool HasSafeDivisor(MethodDefinition method, Instruction division)
    {
        HashSet<Instruction> landings = Landings(method);
        Instruction at = division;
        while (true)
        {
            if (landings.Contains(at) || at.Previous == null)
                return false;
            at = at.Previous;
            if (Constant(at) is long divisor)
                return divisor is not (0 or -1) && !LosesBits(divisor, at, division);
            if (at.OpCode.Code is not (Code.Conv_I8 or Code.Conv_U8
                or Code.Conv_I4 or Code.Conv_U4))
            {
                return false;
            }
        }
    }

    /// <summary>A conversion to four bytes could turn a constant of eight into 0 or -1.</summary>
    private static bool LosesBits(long divisor, Instruction constant, Instruction division) =>
        constant.Next != division && divisor != (int)divisor;

    private static HashSet<Instruction> Landings(MethodDefinition method) => method.Body.Instructions
        .SelectMany(one => one.Operand switch
        {
            Instruction target => new[] { target },
            Instruction[] targets => targets,
            _ => [],
        })
        .ToHashSet();

    private static long? Constant(Instruction instruction) => instruction.OpCode.Code switch
    {
        Code.Ldc_I4 => (int)instruction.Operand,
        Code.Ldc_I4_S => (sbyte)instruction.Operand,
        Code.Ldc_I8 => (long)instruction.Operand,
        >= Code.Ldc_I4_M1 and <= Code.Ldc_I4_8 =>
            instruction.OpCode.Code - Code.Ldc_I4_0,
        _ => null,
    };
}
