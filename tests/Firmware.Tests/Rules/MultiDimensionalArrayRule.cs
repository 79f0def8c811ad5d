using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Arrays of more than one dimension: no image can be made of them.</summary>
public sealed class MultiDimensionalArrayRule : MentionRule
{
    /// <inheritdoc/>
    protected override (string Found, string Remedy)? Judge(TypeReference type) => type is ArrayType { Rank: > 1 }
        ? ("multi-dimensional array " + type.FullName, "Use an array of arrays, or one array and an index that is computed")
        : null;
}
