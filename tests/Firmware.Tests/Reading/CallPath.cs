using Mono.Cecil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>A method and the shortest way in which it is reached.</summary>
/// <param name="Method">The method; it has a body.</param>
/// <param name="Caller">The way to its caller, null at the root.</param>
public sealed record CallPath(MethodDefinition Method, CallPath? Caller)
{
    /// <inheritdoc/>
    public override string ToString()
    {
        string own = Method.DeclaringType.Name + "." + Method.Name;
        return Caller == null ? own : Caller + " > " + own;
    }
}
