using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using LubeController.Firmware.Tests.Rules;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Xunit;

namespace LubeController.Firmware.Tests;

/// <summary>Rules over whole assemblies, and over what only the microcontroller has, shown on modules made up here.</summary>
public sealed class MadeUpModuleTests
{
    [Theory]
    [InlineData(LimitsRule.IlBytes - 1, 0)]
    [InlineData(LimitsRule.IlBytes, 1)]
    public void Il_has_to_stay_below_64_KB(int bytes, int findings)
    {
        ModuleDefinition module = Make(out TypeDefinition type);
        MethodDefinition method = AddMethod(type, MethodAttributes.Static);
        for (int count = 1; count < bytes; count++)
            method.Body.GetILProcessor().Emit(OpCodes.Nop);
        method.Body.GetILProcessor().Emit(OpCodes.Ret);
        module = Reread(module);
        Assert.Equal(bytes, LimitsRule.IlOf(module));
        Assert.Equal(findings, new LimitsRule().Check(module).Count());
    }

    [Theory]
    [InlineData(MethodAttributes.Static, 255, 0)]
    [InlineData(MethodAttributes.Static, 256, 1)]
    [InlineData(MethodAttributes.Virtual, 256, 1)]
    [InlineData((MethodAttributes)0, 256, 1)]
    public void Methods_of_one_kind_have_to_stay_within_255(MethodAttributes kind, int count, int findings)
    {
        ModuleDefinition module = Make(out TypeDefinition type);
        for (int index = 0; index < count; index++)
            AddMethod(type, kind).Body.GetILProcessor().Emit(OpCodes.Ret);
        AddMethod(type, kind == MethodAttributes.Static ? 0 : MethodAttributes.Static).Body.GetILProcessor().Emit(OpCodes.Ret);
        Assert.Equal(findings, new LimitsRule().Check(module).Count());
    }

    [Fact]
    public void Only_the_core_library_and_the_firmware_itself_may_be_referenced()
    {
        ModuleDefinition module = Make(out _);
        module.AssemblyReferences.Clear();
        IFirmwareRule rule = FirmwareSubset.Named(nameof(ReferencesRule));
        module.AssemblyReferences.Add(new AssemblyNameReference("mscorlib", null));
        module.AssemblyReferences.Add(new AssemblyNameReference("LubeController.Core", null));
        Assert.Empty(rule.Check(module));
        module.AssemblyReferences.Add(new AssemblyNameReference("System.Runtime", null));
        module.ModuleReferences.Add(new ModuleReference("kernel"));
        Assert.Equal(["reference to System.Runtime", "reference to kernel"], rule.Check(module).Select(finding => finding.Found));
    }

    /// <summary>Each was tried on both runtimes and works on one: the rule must come to the same from the two libraries alone.</summary>
    [Theory]
    [InlineData("System.TimeSpan", "FromHours")]
    [InlineData("System.TimeSpan", "FromDays")]
    [InlineData("System.DateTime", "FromUnixTimeSeconds")]
    [InlineData("System.DateTime", "ToUnixTimeSeconds")]
    [InlineData("System.Char", "ToUpper")]
    [InlineData("System.Char", "ToLower")]
    [InlineData("System.BitConverter", "get_IsLittleEndian")]
    [InlineData("System.Diagnostics.Debug", "WriteLine")]
    [InlineData("System.SpanByte", "ToArray")]
    public void A_member_of_the_microcontroller_alone_is_refused(string type, string member)
    {
        IReadOnlyList<string> found = FoundWhenCalled(type, member, nameof(BothRuntimesRule));
        Assert.NotEmpty(found);
        Assert.All(found, one => Assert.Contains("is not on the desktop", one));
        Assert.NotEmpty(FoundWhenCalled(type, member, nameof(DifferingMembersRule)));
    }

    [Theory]
    [InlineData("System.String", "get_Length")]
    [InlineData("System.Threading.Thread", "Sleep")]
    [InlineData("System.Array", "Clear")]
    public void A_member_of_both_is_not_refused(string type, string member)
    {
        Assert.Empty(FoundWhenCalled(type, member, nameof(BothRuntimesRule)));
        Assert.Empty(FoundWhenCalled(type, member, nameof(DifferingMembersRule)));
    }

    private static List<string> FoundWhenCalled(string type, string member, string rule)
    {
        ModuleDefinition module = Make(out TypeDefinition user);
        MethodDefinition called = FirmwareModules.CoreLibrary.GetType(type).Methods.First(method => method.Name == member);
        ILProcessor code = AddMethod(user, MethodAttributes.Static).Body.GetILProcessor();
        code.Emit(OpCodes.Call, module.ImportReference(called));
        code.Emit(OpCodes.Ret);
        return FirmwareSubset.Named(rule).Check(module).Select(finding => finding.Found).ToList();
    }

    private static ModuleDefinition Make(out TypeDefinition type)
    {
        var module = ModuleDefinition.CreateModule("MadeUp", ModuleKind.Dll);
        type = new TypeDefinition("MadeUp", "User", TypeAttributes.Public | TypeAttributes.Class, module.ImportReference(FirmwareModules.CoreLibrary.TypeSystem.Object));
        module.Types.Add(type);
        return module;
    }

    private static MethodDefinition AddMethod(TypeDefinition type, MethodAttributes kind)
    {
        var nothing = new TypeReference("System", "Void", type.Module, type.BaseType.Scope, true);
        var method = new MethodDefinition("M" + type.Methods.Count, MethodAttributes.Public | kind, type.Module.ImportReference(nothing));
        type.Methods.Add(method);
        return method;
    }

    private static ModuleDefinition Reread(ModuleDefinition module)
    {
        var bytes = new System.IO.MemoryStream();
        module.Write(bytes);
        bytes.Position = 0;
        return ModuleDefinition.ReadModule(bytes);
    }
}
