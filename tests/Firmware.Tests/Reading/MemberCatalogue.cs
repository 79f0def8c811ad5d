using System.Collections.Generic;
using System.IO;
using System.Linq;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Reading;

/// <summary>What a core library offers, forwarded types included, asked by name and signature.</summary>
public sealed class MemberCatalogue
{
    private readonly ModuleDefinition _library;

    private MemberCatalogue(ModuleDefinition library) => _library = library;

    /// <summary>The microcontroller's core library.</summary>
    public static MemberCatalogue Microcontroller { get; } = new(FirmwareModules.CoreLibrary);

    /// <summary>The desktop's mscorlib, which forwards every type to where it lives now.</summary>
    public static MemberCatalogue Desktop { get; } = new(ModuleDefinition.ReadModule(
        Path.Combine(Path.GetDirectoryName(typeof(object).Assembly.Location)!, "mscorlib.dll"),
        new ReaderParameters { AssemblyResolver = new DefaultAssemblyResolver() }));

    /// <summary>Whether a reference leads to a core library; arrays and pointers belong to no library.</summary>
    public static bool IsOfCoreLibrary(MemberReference member)
    {
        TypeReference type = member as TypeReference ?? member.DeclaringType;
        if (type is ArrayType or PointerType)
            return false;
        return type.GetElementType().Scope is AssemblyNameReference { Name: "mscorlib" or "netstandard" or "System.Private.CoreLib" }
            or AssemblyNameReference { Name: "System.Runtime" or "System.Console" or "System.Linq" or "System.Collections" };
    }

    /// <summary>Whether it offers a type, method or field for use from outside.</summary>
    public bool Has(MemberReference member)
    {
        TypeDefinition? type = Find((member as TypeReference ?? member.DeclaringType).GetElementType());
        if (type == null || !(type.IsPublic || type.IsNestedPublic))
            return false;
        return member switch
        {
            TypeReference => true,
            MethodReference method => Lineage(type).Any(one => HasMethod(one, method.GetElementMethod())),
            FieldReference field => Lineage(type).SelectMany(one => one.Fields)
                .Any(one => one.Name == field.Name && one.FieldType.FullName == field.FieldType.FullName && (one.IsPublic || one.IsFamily)),
            _ => false,
        };
    }

    private static bool HasMethod(TypeDefinition type, MethodReference method) =>
        MetadataResolver.GetMethod(type.Methods, method) is { } found && (found.IsPublic || found.IsFamily || found.IsFamilyOrAssembly);

    private TypeDefinition? Find(TypeReference type)
    {
        if (type.DeclaringType != null)
            return Find(type.DeclaringType)?.NestedTypes.FirstOrDefault(nested => nested.Name == type.Name);
        return _library.GetType(type.FullName)
            ?? _library.ExportedTypes.FirstOrDefault(forwarded => forwarded.FullName == type.FullName)?.Resolve();
    }

    private static IEnumerable<TypeDefinition> Lineage(TypeDefinition? type)
    {
        for (; type != null; type = type.BaseType?.Resolve())
            yield return type;
    }
}
