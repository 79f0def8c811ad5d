using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using LubeController.Firmware.Tests.Rules;
using LubeController.Firmware.Tests.Scan;
using Mono.Cecil;
using Xunit;

namespace LubeController.Firmware.Tests;

/// <summary>The rules, held against the DLLs that are deployed.</summary>
public sealed class FirmwareTests
{
    private static readonly AllocationRule Allocations = new(new CallGraph(FirmwareModules.All));

    public static TheoryData<string, string> RulesAndAssemblies()
    {
        var data = new TheoryData<string, string>();
        foreach (string rule in FirmwareSubset.Rules.Select(rule => rule.GetType().Name))
        {
            foreach (string assembly in FirmwareModules.Names)
                data.Add(rule, assembly);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(RulesAndAssemblies))]
    public void Firmware_keeps_to_the_subset(string rule, string assembly) =>
        Nothing(FirmwareSubset.Named(rule).Check(FirmwareModules.Named(assembly)));

    [Theory]
    [InlineData("LubeController.Core")]
    [InlineData("LubeController.Board")]
    [InlineData("LubeController.RuleTemplate")]
    public void Each_assembly_holds_code_for_the_rules_to_read(string assembly)
    {
        ModuleDefinition module = FirmwareModules.Named(assembly);
        Assert.Contains(module.GetTypes(), type => type.IsPublic && type.Namespace == assembly && type.Methods.Any(method => method.HasBody));
        Assert.True(LimitsRule.IlOf(module) > 100, $"{assembly} holds {LimitsRule.IlOf(module)} bytes of IL: it is empty but for a placeholder.");
    }

    [Fact]
    public void The_tests_read_the_very_assemblies_that_are_loaded()
    {
        foreach (Type type in new[] { typeof(Board.IBoard), typeof(RuleTemplate.WarmRestRule), typeof(Core.Controller) })
            Assert.Equal(type.Assembly.ManifestModule.ModuleVersionId, FirmwareModules.Named(type.Assembly.GetName().Name!).Mvid);
    }

    [Theory]
    [InlineData("LubeController.Core.Controller", "Scan")]
    [InlineData("LubeController.Board.MainLoop", "RunOnce")]
    public void Nothing_is_allocated_in_code_that_a_scan_can_reach(string type, string method) =>
        Nothing(Allocations.Check(type, method));

    [Fact]
    public void A_scan_is_followed_into_a_rule_of_the_users_own()
    {
        IReadOnlyList<CallPath> reachable = Allocations.Reachable("LubeController.Core.Controller", "Scan");
        Assert.Contains(reachable, path => path.Method.DeclaringType.FullName == "LubeController.RuleTemplate.WarmRestRule" && path.Method.Name == "Advance");
    }

    private static void Nothing(IEnumerable<Finding> findings)
    {
        List<Finding> all = findings.ToList();
        Assert.True(all.Count == 0, $"{all.Count} found:{Environment.NewLine}{string.Join(Environment.NewLine, all)}");
    }
}
