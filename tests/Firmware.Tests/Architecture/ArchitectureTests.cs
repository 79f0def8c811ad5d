using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>The rules of the rooms, held against this repository.</summary>
public sealed class ArchitectureTests
{
    private static readonly Repository Here = RepositoryOnDisk.Read();

    private static readonly IArchitectureRule[] Rules =
    [
        new ArrowsRule(),
        new FirmwareProjectRule(),
        new OneBuildRule(),
        new NoConditionalCodeRule(),
        new TopLevelRule(),
        new SolutionRule(),
        new CommonPropsRule(),
        new PackageVersionsRule(),
        new LockFilesRule(),
        new BuiltReferencesRule(),
        new NamespaceCyclesRule(),
    ];

    public static TheoryData<string> RuleNames() => new(Rules.Select(rule => rule.GetType().Name));

    [Theory]
    [MemberData(nameof(RuleNames))]
    public void The_repository_keeps_to_its_rooms(string rule)
    {
        List<string> found = Rules.Single(one => one.GetType().Name == rule).Check(Here).ToList();
        Assert.True(found.Count == 0, $"{found.Count} found:{Environment.NewLine}{string.Join(Environment.NewLine, found)}");
    }

    [Fact]
    public void Every_rule_is_held_against_the_repository() => Assert.Equal(
        typeof(IArchitectureRule).Assembly.GetTypes().Where(type => type.IsClass && typeof(IArchitectureRule).IsAssignableFrom(type)).Select(type => type.Name).Order(),
        Rules.Select(rule => rule.GetType().Name).Order());

    [Theory]
    [InlineData("firmware/LubeController.Core/LubeController.Core.csproj")]
    [InlineData("firmware/LubeController.Board/LubeController.Board.csproj")]
    [InlineData("firmware/LubeController.RuleTemplate/LubeController.RuleTemplate.csproj")]
    [InlineData("host-sim/Plant/LubeController.Plant.csproj")]
    [InlineData("host-sim/Emulator/LubeController.Emulator.csproj")]
    [InlineData("host-sim/Scripts/LubeController.Scripts.csproj")]
    [InlineData("host-sim/Cli/LubeController.Cli.csproj")]
    [InlineData("tests/Firmware.Tests/LubeController.Firmware.Tests.csproj")]
    public void The_rooms_are_there_to_be_looked_at(string path) => Assert.Contains(path, Here.Projects.Select(project => project.Path));

    [Fact]
    public void Files_of_every_kind_were_read()
    {
        Assert.Contains("firmware/LubeController.Core/Controller.cs", Here.FirmwareSources.Keys);
        Assert.Equal(
            ["Directory.Build.props", "firmware/Directory.Build.props", "host-sim/Directory.Build.props", "tests/Directory.Build.props"],
            Here.Projects.Where(project => project.IsCommonProps).Select(project => project.Path));
        Assert.Contains("LubeController.sln", Here.TopLevel);
        Assert.Contains("tests/Firmware.Tests/packages.lock.json", Here.LockFiles);
        Assert.Equal(Here.BuiltReferences.Keys.Where(path => Rooms.Of(path) is not (Rooms.Tests or Rooms.Support)).Order(), Here.NamespaceUses.Keys.Order());
        Assert.Contains(Here.NamespaceUses["host-sim/Plant/LubeController.Plant.csproj"], use => use is { From: "LubeController.Plant.Divider", To: "LubeController.Plant.Pistons" });
    }
}
