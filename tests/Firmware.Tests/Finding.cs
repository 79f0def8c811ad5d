using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LubeController.Firmware.Tests;

/// <summary>One thing that the firmware subset refuses: where it stands, what it is, what to write instead.</summary>
/// <param name="Assembly">Assembly name, without version.</param>
/// <param name="Type">Full type name, empty for the assembly as a whole.</param>
/// <param name="Member">Method or field name, empty for the type as a whole.</param>
/// <param name="Offset">IL offset in bytes, -1 where there is none.</param>
/// <param name="Found">What was found.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record Finding(string Assembly, string Type, string Member, int Offset, string Found, string Remedy)
{
    /// <summary>A finding about a whole assembly.</summary>
    public static Finding In(ModuleDefinition module, string found, string remedy) =>
        new(module.Assembly.Name.Name, "", "", -1, found, remedy);

    /// <summary>A finding about a type or one of its members.</summary>
    public static Finding In(TypeDefinition type, string member, string found, string remedy) =>
        new(type.Module.Assembly.Name.Name, type.FullName, member, -1, found, remedy);

    /// <summary>A finding at an instruction.</summary>
    public static Finding At(MethodDefinition method, Instruction instruction, string found, string remedy) =>
        new(method.Module.Assembly.Name.Name, method.DeclaringType.FullName, method.Name, instruction.Offset, found, remedy);

    /// <inheritdoc/>
    public override string ToString()
    {
        string place = Type.Length == 0 ? Assembly : Assembly + ": " + Type;
        if (Member.Length > 0)
            place += "." + Member;
        if (Offset >= 0)
            place += $" at IL_{Offset:x4}";
        return $"{place}: {Found}. {Remedy}.";
    }
}
