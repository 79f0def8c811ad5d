using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>
/// Floating point: a division by zero throws on the interpreter, and rounding could differ. The core uses integers only;
/// the board hands it raw counts, so it is held to the same.
/// </summary>
public sealed class FloatingPointRule : MentionRule
{
    private const string Remedy = "Use integers in a smaller unit";

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ModuleDefinition module) => base.Check(module).Concat(Il.Instructions(module)
        .Where(at => IsFloating(at.Instruction.OpCode))
        .Select(at => Finding.At(at.Method, at.Instruction, "floating point " + at.Instruction.OpCode.Name, Remedy)));

    /// <inheritdoc/>
    protected override (string Found, string Remedy)? Judge(TypeReference type) =>
        type.MetadataType is MetadataType.Single or MetadataType.Double || type.FullName is "System.Decimal" or "System.Half"
            ? ("floating point " + type.FullName, Remedy)
            : null;

    private static bool IsFloating(OpCode code) => code.Code is Code.Ckfinite or Code.Conv_R_Un
        or Code.Conv_R4 or Code.Conv_R8
        or Code.Ldc_R4 or Code.Ldc_R8
        or Code.Ldelem_R4 or Code.Ldelem_R8
        or Code.Stelem_R4 or Code.Stelem_R8
        or Code.Ldind_R4 or Code.Ldind_R8
        or Code.Stind_R4 or Code.Stind_R8;
}
