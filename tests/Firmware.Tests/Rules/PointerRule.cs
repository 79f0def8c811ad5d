using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Pointers, pinned locals and function pointers: no image can be made of them.</summary>
public sealed class PointerRule : MentionRule
{
    /// <inheritdoc/>
    protected override (string Found, string Remedy)? Judge(TypeReference type) => type is PointerType or PinnedType or FunctionPointerType
        ? ("pointer " + type.FullName, "Use an array and an index")
        : null;
}
