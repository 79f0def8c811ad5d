using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using LubeController.Firmware.Tests.Rules;
using Xunit;

namespace LubeController.Firmware.Tests;

/// <summary>Each rule, seen to refuse what it is there for and nothing else.</summary>
public sealed class SampleTests
{
    private const string Place = "LubeController.Firmware.Tests.Samples.";

    private static readonly ConcurrentDictionary<string, List<Finding>> Checked = new();

    public static TheoryData<string, string, int, string> Bad() => new()
    {
        { nameof(GenericsRule), "GenericsSample/UnusedFunc", 1, "generic System.Func`1<System.Int32>" },
        { nameof(GenericsRule), "GenericsSample/UnusedAction", 1, "generic System.Action`1<System.Int32>" },
        { nameof(GenericsRule), "GenericsSample/GenericEvent", 1, "generic System.EventHandler`1" },
        { nameof(GenericsRule), "GenericsSample/GenericType`1", 1, "generic type" },
        { nameof(GenericsRule), "GenericsSample/GenericMethod", 1, "generic method" },
        { nameof(GenericsRule), "GenericsSample/GenericCall", 1, "generic method" },
        { nameof(GenericsRule), "GenericsSample/GenericLocal", 1, "generic System.Collections.Generic.List`1" },
        { nameof(GenericsRule), "GenericsSample/GenericInterface", 1, "generic System.IComparable`1" },
        { nameof(GenericsRule), "GenericsSample/ArrayOfGeneric", 1, "generic System.Collections.Generic.List`1" },
        { nameof(GenericsRule), "GenericsSample/NullableValue", 1, "nullable value" },
        { nameof(CheckedArithmeticRule), "CheckedArithmeticSample/Addition", 1, "add.ovf" },
        { nameof(CheckedArithmeticRule), "CheckedArithmeticSample/Conversion", 1, "conv.ovf.u1" },
        { nameof(CheckedArithmeticRule), "CheckedArithmeticSample/UnsignedMultiplication", 1, "mul.ovf.un" },
        { nameof(StructRule), "StructSample/Copied", 1, "struct local" },
        { nameof(StructRule), "StructSample/Parameter", 1, "struct parameter" },
        { nameof(StructRule), "StructSample/Result", 2, "struct " },
        { nameof(StructRule), "StructSample/ThroughReference", 2, "struct copy by " },
        { nameof(StructRule), "StructSample/BetweenFields", 2, "struct copy by " },
        { nameof(StructRule), "StructSample/TimeLocal", 1, "struct local" },
        { nameof(StaticInitialiserRule), "StaticInitialiserSample/Direct", 1, "reads" },
        { nameof(StaticInitialiserRule), "StaticInitialiserSample/ThroughMethods", 1, "ThroughMethods..cctor > ThroughMethods.Make > Source.Read" },
        { nameof(StaticInitialiserRule), "StaticInitialiserSample/ThroughConstructor", 1, "ThroughConstructor..cctor > Reader..ctor" },
        { nameof(StaticInitialiserRule), "StaticInitialiserSample/ThroughOverride", 1, "ThroughOverride.Make > Answers.Ask" },
        { nameof(DefaultInterfaceMethodRule), "DefaultInterfaceMethodSample/IWithBody", 1, "interface method with a body" },
        { nameof(DefaultInterfaceMethodRule), "DefaultInterfaceMethodSample/IWithStatic", 1, "interface method with a body" },
        { nameof(StackallocRule), "StackMemorySample/Stackalloc", 1, "stackalloc" },
        { nameof(FixedBufferRule), "StackMemorySample/FixedBuffer", 1, "fixed buffer" },
        { nameof(MultiDimensionalArrayRule), "ArrayAndPointerSample/UnusedGrid", 1, "multi-dimensional array" },
        { nameof(MultiDimensionalArrayRule), "ArrayAndPointerSample/MadeGrid", 1, "multi-dimensional array" },
        { nameof(PointerRule), "ArrayAndPointerSample/PointerLocal", 1, "pointer System.Int32*" },
        { nameof(PointerRule), "ArrayAndPointerSample/PinnedLocal", 2, "pointer " },
        { nameof(PointerRule), "ArrayAndPointerSample/FunctionPointer", 1, "pointer " },
        { nameof(FloatingPointRule), "FloatingPointSample/Field", 1, "System.Single" },
        { nameof(FloatingPointRule), "FloatingPointSample/Signature", 1, "System.Double" },
        { nameof(FloatingPointRule), "FloatingPointSample/ConstantAndConversion", 2, "floating point " },
        { nameof(FloatingPointRule), "FloatingPointSample/ArrayElement", 3, "floating point " },
        { nameof(FloatingPointRule), "FloatingPointSample/DecimalField", 1, "System.Decimal" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/WritesDebug", 1, "System.Diagnostics.Debug" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/HoldsSpanByte", 1, "System.SpanByte" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Hours", 1, "System.TimeSpan.FromHours" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Days", 1, "System.TimeSpan.FromDays" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/UnixTime", 1, "System.DateTime.UnixEpoch" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Upper", 1, "System.Char.ToUpper" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Lower", 1, "System.Char.ToLower" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Endian", 1, "System.BitConverter.IsLittleEndian" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/InitSetter", 1, "init setter seen from outside" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/ForeignInitSetter", 1, "init setter of another assembly" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesMath", 1, "Math" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesStringBuilder", 1, "StringBuilder" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesHashtable", 1, "Hashtable" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesEnvironment", 1, "Environment" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesEncoding", 1, "Encoding" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesLinq", 1, "LINQ" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesTuple", 1, "tuple" },
        { nameof(AbsentTypesRule), "AbsentSample/UsesNullableValue", 1, "nullable value" },
        { nameof(VolatileRule), "AbsentSample/VolatileField", 2, "volatile " },
        { nameof(StateMachineRule), "AbsentSample/Yields", 1, "yield or async" },
        { nameof(StateMachineRule), "AbsentSample/Awaits", 1, "yield or async" },
        { nameof(RecordRule), "AbsentSample/RecordClass", 1, "record" },
        { nameof(RecordRule), "AbsentSample/RecordStruct", 1, "record" },
        { nameof(DivisionRule), "DivisionSample/ByVariable", 1, "div by a divisor" },
        { nameof(DivisionRule), "DivisionSample/RemainderByVariable", 1, "rem.un by a divisor" },
        { nameof(DivisionRule), "DivisionSample/CheckedElsewhere", 1, "div by a divisor" },
        { nameof(DivisionRule), "DivisionSample/ByMinusOne", 1, "div by a divisor" },
        { nameof(DivisionRule), "DivisionSample/ByChoiceOfConstants", 1, "div by a divisor" },
        { nameof(BothRuntimesRule), "BothRuntimesSample/MissingType", 2, "is not on the " },
        { nameof(BothRuntimesRule), "BothRuntimesSample/MissingMember", 1, "System.String::IsNullOrWhiteSpace" },
        { nameof(BothRuntimesRule), "BothRuntimesSample/MissingOverload", 2, "is not on the microcontroller" },
    };

    public static TheoryData<string, string> Good() => new()
    {
        { nameof(GenericsRule), "GenericsSample/Good" },
        { nameof(CheckedArithmeticRule), "CheckedArithmeticSample/Good" },
        { nameof(StructRule), "StructSample/Good" },
        { nameof(StaticInitialiserRule), "StaticInitialiserSample/Good" },
        { nameof(DefaultInterfaceMethodRule), "DefaultInterfaceMethodSample/IGood" },
        { nameof(StackallocRule), "StackMemorySample/Good" },
        { nameof(FixedBufferRule), "StackMemorySample/Good" },
        { nameof(MultiDimensionalArrayRule), "ArrayAndPointerSample/Good" },
        { nameof(PointerRule), "ArrayAndPointerSample/Good" },
        { nameof(FloatingPointRule), "FloatingPointSample/Good" },
        { nameof(DifferingMembersRule), "DifferingMembersSample/Good" },
        { nameof(AbsentTypesRule), "AbsentSample/Good" },
        { nameof(VolatileRule), "AbsentSample/Good" },
        { nameof(StateMachineRule), "AbsentSample/Good" },
        { nameof(RecordRule), "AbsentSample/Good" },
        { nameof(DivisionRule), "DivisionSample/Good" },
        { nameof(DivisionRule), "DivisionSample/Guard" },
        { nameof(BothRuntimesRule), "BothRuntimesSample/Good" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_rule_refuses_its_bad_sample(string rule, string sample, int count, string found)
    {
        List<Finding> findings = Findings(rule, sample);
        Assert.True(findings.Count == count, $"{findings.Count} instead of {count}: {string.Join("; ", findings)}");
        Assert.All(findings, finding => Assert.Contains(found, finding.Found));
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void A_rule_leaves_its_good_sample_alone(string rule, string sample)
    {
        Assert.NotNull(FirmwareModules.Samples.GetType(Place + sample));
        Assert.Empty(Findings(rule, sample));
    }

    [Fact]
    public void Every_rule_has_a_sample_or_a_made_up_module()
    {
        IEnumerable<string> shown = Bad().Select(row => row.Data.Item1).Concat([nameof(LimitsRule), nameof(ReferencesRule)]);
        IEnumerable<string> written = typeof(IFirmwareRule).Assembly.GetTypes()
            .Where(type => typeof(IFirmwareRule).IsAssignableFrom(type) && !type.IsAbstract)
            .Select(type => type.Name)
            .Order();
        Assert.Equal(written, shown.Distinct().Order());
        Assert.Equal(written, FirmwareSubset.Rules.Select(rule => rule.GetType().Name).Order());
    }

    private static List<Finding> Findings(string rule, string sample)
    {
        return Checked.GetOrAdd(rule, CheckAll)
            .Where(finding => Within(finding.Type, sample) || (rule == nameof(StaticInitialiserRule) && finding.Found.Contains($"of {Place + sample} ")))
            .ToList();
    }

    private static List<Finding> CheckAll(string rule)
    {
        IFirmwareRule judge = rule == nameof(DivisionRule) ? new DivisionRule(Place + "DivisionSample/Guard") : FirmwareSubset.Named(rule);
        return judge.Check(FirmwareModules.Samples).ToList();
    }

    private static bool Within(string type, string sample) => type == Place + sample || type.StartsWith(Place + sample + "/", System.StringComparison.Ordinal);
}
