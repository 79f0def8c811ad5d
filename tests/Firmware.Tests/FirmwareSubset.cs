using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using LubeController.Firmware.Tests.Rules;

namespace LubeController.Firmware.Tests;

/// <summary>The rules that hold for every assembly under <c>firmware/</c>, in the one place that lists them.</summary>
public static class FirmwareSubset
{
    /// <summary>The one class that may divide by a variable.</summary>
    public const string DivisionGuard = "LubeController.Core.SafeDivide";

    /// <summary>All rules; never empty.</summary>
    public static IReadOnlyList<IFirmwareRule> Rules { get; } =
    [
        new GenericsRule(),
        new CheckedArithmeticRule(),
        new StructRule(),
        new StaticInitialiserRule(),
        new DefaultInterfaceMethodRule(),
        new StackallocRule(),
        new FixedBufferRule(),
        new MultiDimensionalArrayRule(),
        new PointerRule(),
        new FloatingPointRule(),
        new DifferingMembersRule(),
        new AbsentTypesRule(),
        new VolatileRule(),
        new StateMachineRule(),
        new RecordRule(),
        new DivisionRule(DivisionGuard),
        new LimitsRule(),
        new ReferencesRule([.. FirmwareModules.Names, "mscorlib"]),
        new BothRuntimesRule(MemberCatalogue.Microcontroller, MemberCatalogue.Desktop),
    ];

    /// <summary>A rule by the name of its class.</summary>
    public static IFirmwareRule Named(string name) => Rules.Single(rule => rule.GetType().Name == name);
}
