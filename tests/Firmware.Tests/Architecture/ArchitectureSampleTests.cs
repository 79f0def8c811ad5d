using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Each rule of the rooms, seen to refuse a made-up repository and to leave its good twin alone.</summary>
public sealed class ArchitectureSampleTests
{
    private const string Core = "firmware/LubeController.Core/LubeController.Core.csproj";
    private const string Board = "firmware/LubeController.Board/LubeController.Board.csproj";
    private const string Plant = "host-sim/Plant/LubeController.Plant.csproj";
    private const string Emulator = "host-sim/Emulator/LubeController.Emulator.csproj";
    private const string Scripts = "host-sim/Scripts/LubeController.Scripts.csproj";
    private const string Analysis = "host-sim/Analysis/LubeController.Analysis.csproj";
    private const string Rig = "host-sim/Rig/LubeController.Rig.csproj";
    private const string Panel = "host-sim/Panel/LubeController.Panel.csproj";
    private const string Cli = "host-sim/Cli/LubeController.Cli.csproj";
    private const string Template = "firmware/LubeController.RuleTemplate/LubeController.RuleTemplate.csproj";
    private const string Plots = "host-sim/Plots/LubeController.Plots.csproj";
    private const string Support = "tests/Support/LubeController.Tests.Support.csproj";
    private const string Tests = "tests/A.Tests/A.Tests.csproj";

    private const string GoodFirmware = """
        <Project><PropertyGroup><TargetFramework>netstandard2.0</TargetFramework><NoStdLib>true</NoStdLib>
        <NoCompilerStandardLib>true</NoCompilerStandardLib>
        <DisableImplicitFrameworkReferences>true</DisableImplicitFrameworkReferences></PropertyGroup>
        <ItemGroup><PackageReference Include="nanoFramework.CoreLibrary" ExcludeAssets="all" PrivateAssets="all" />
        <Reference Include="mscorlib" /></ItemGroup></Project>
        """;

    [Theory]
    [InlineData(Core, Plant, false)]
    [InlineData(Core, Board, false)]
    [InlineData(Board, Core, true)]
    [InlineData(Board, Template, false)]
    [InlineData(Template, Core, true)]
    [InlineData(Template, Board, false)]
    [InlineData(Plant, Core, false)]
    [InlineData(Emulator, Core, true)]
    [InlineData(Emulator, Board, true)]
    [InlineData(Emulator, Plant, true)]
    [InlineData(Emulator, Template, false)]
    [InlineData(Emulator, Scripts, false)]
    [InlineData(Scripts, Emulator, true)]
    [InlineData(Scripts, Template, true)]
    [InlineData(Scripts, Analysis, false)]
    [InlineData(Analysis, Scripts, true)]
    [InlineData(Analysis, Emulator, true)]
    [InlineData(Analysis, Core, true)]
    [InlineData(Rig, Scripts, true)]
    [InlineData(Rig, Emulator, false)]
    [InlineData(Panel, Emulator, true)]
    [InlineData(Panel, Rig, false)]
    [InlineData(Plots, Scripts, true)]
    [InlineData(Plots, Support, false)]
    [InlineData(Cli, Plots, false)]
    [InlineData(Cli, Panel, true)]
    [InlineData(Cli, Rig, true)]
    [InlineData(Cli, Tests, false)]
    [InlineData(Tests, Cli, true)]
    [InlineData(Tests, "tests/B.Tests/B.Tests.csproj", false)]
    [InlineData("tests/Mutation/Tests/M.Tests.csproj", "tests/Mutation/Core/M.csproj", true)]
    [InlineData(Tests, "tests/Mutation/Core/M.csproj", false)]
    [InlineData(Scripts, "elsewhere/X/X.csproj", false)]
    public void References_go_along_the_arrows(string from, string to, bool allowed)
    {
        string up = string.Concat(Enumerable.Repeat("../", from.Count(letter => letter == '/')));
        List<string> found = Check(new ArrowsRule(), new ProjectFile(from, $"<Project><ItemGroup><ProjectReference Include=\"{up}{to}\" /></ItemGroup></Project>"));
        Assert.Equal(allowed ? 0 : 1, found.Count);
        Assert.All(found, one => Assert.StartsWith($"{from}: references {to}; ", one));
    }

    [Theory]
    [InlineData("host-sim/Newcomer/Newcomer.csproj")]
    [InlineData("firmware/LubeController.Other/LubeController.Other.csproj")]
    [InlineData("tools/T/T.csproj")]
    public void A_project_lies_in_a_room(string path) =>
        Assert.Contains("lies in no room", Assert.Single(Check(new ArrowsRule(), new ProjectFile(path, "<Project />"))));

    [Theory]
    [InlineData("netstandard2.0", "net10.0", "TargetFramework is net10.0")]
    [InlineData("<NoStdLib>true", "<NoStdLib>false", "NoStdLib is false")]
    [InlineData("<NoCompilerStandardLib>true</NoCompilerStandardLib>", "", "NoCompilerStandardLib is not set")]
    [InlineData("<DisableImplicitFrameworkReferences>true", "<DisableImplicitFrameworkReferences>false", "DisableImplicitFrameworkReferences is false")]
    [InlineData("</PropertyGroup>", "<DefineConstants>X</DefineConstants></PropertyGroup>", "DefineConstants is set")]
    [InlineData("</ItemGroup>", "<PackageReference Include=\"Other\" /></ItemGroup>", "package Other")]
    [InlineData("</ItemGroup>", "<Reference Include=\"System.Core\" /></ItemGroup>", "reference to System.Core")]
    [InlineData(" PrivateAssets=\"all\"", "", "must reference nanoFramework.CoreLibrary once")]
    public void Firmware_is_compiled_against_its_core_library_alone(string good, string bad, string found)
    {
        Assert.Empty(Check(new FirmwareProjectRule(), new ProjectFile(Core, GoodFirmware)));
        Assert.Contains(good, GoodFirmware);
        Assert.Contains(found, Assert.Single(Check(new FirmwareProjectRule(), new ProjectFile(Core, GoodFirmware.Replace(good, bad)))));
    }

    [Fact]
    public void What_props_files_say_counts_for_the_projects_below_them()
    {
        var common = new ProjectFile("firmware/Directory.Build.props", GoodFirmware);
        var bare = new ProjectFile(Core, "<Project />");
        Assert.Empty(new FirmwareProjectRule().Check(new Repository { Projects = [common, bare] }));
        Assert.NotEmpty(new FirmwareProjectRule().Check(new Repository { Projects = [new ProjectFile("tests/Directory.Build.props", GoodFirmware), bare] }));

        var defining = new ProjectFile("Directory.Build.props", "<Project><PropertyGroup><DefineConstants>X</DefineConstants></PropertyGroup></Project>");
        Assert.Contains("DefineConstants is set", Assert.Single(new FirmwareProjectRule().Check(new Repository { Projects = [defining, common, bare] })));

        var desktop = new ProjectFile(Core, "<Project><PropertyGroup><TargetFramework>net10.0</TargetFramework></PropertyGroup></Project>");
        Assert.Contains("TargetFramework is net10.0", Assert.Single(new FirmwareProjectRule().Check(new Repository { Projects = [common, desktop] })));
    }

    [Theory]
    [InlineData("Directory.Build.props", "", 0)]
    [InlineData("tests/Directory.Build.props", "", 1)]
    [InlineData("tests/Directory.Build.props", "<Import Project=\"Other.props\" />", 1)]
    [InlineData("tests/Directory.Build.props", "<Import Project=\"$([MSBuild]::GetPathOfFileAbove('Directory.Build.props', '$(MSBuildThisFileDirectory)../'))\" />", 0)]
    [InlineData("Directory.Build.props", "<ItemGroup><ProjectReference Include=\"A.csproj\" /></ItemGroup>", 1)]
    [InlineData(Tests, "<ItemGroup><ProjectReference Include=\"A.csproj\" /></ItemGroup>", 0)]
    public void Nested_props_files_take_in_the_outer_one_and_reference_no_project(string path, string content, int count) =>
        Assert.Equal(count, Check(new CommonPropsRule(), new ProjectFile(path, $"<Project>{content}</Project>")).Count);

    [Theory]
    [InlineData("../../firmware/LubeController.Core/*.cs", Plant, 1)]
    [InlineData("$(Root)/firmware/**/*.cs", Plant, 1)]
    [InlineData("/firmware/A.cs", Plant, 1)]
    [InlineData("..\\Emulator\\A.cs", "Directory.Build.props", 1)]
    [InlineData("Generated/*.cs", Plant, 0)]
    [InlineData("../../../firmware/LubeController.Core/*.cs", "tests/Mutation/Core/M.csproj", 0)]
    public void Sources_are_compiled_once(string include, string project, int count) => Assert.Equal(
        count,
        Check(new OneBuildRule(), new ProjectFile(project, $"<Project><ItemGroup><Compile Include=\"{include}\" /></ItemGroup></Project>")).Count);

    [Fact]
    public void Shared_source_projects_are_refused() =>
        Assert.Single(Check(new OneBuildRule(), new ProjectFile(Plant, "<Project><Import Project=\"../Shared/S.projitems\" /></Project>")));

    [Theory]
    [InlineData("#if DEBUG\n#endif\n", 1)]
    [InlineData("  # if A\n#elif B\n#endif\n", 2)]
    [InlineData("// if #if stood here\n#pragma warning disable X\n", 0)]
    public void Firmware_has_no_conditional_code(string text, int count)
    {
        var repository = new Repository { FirmwareSources = new Dictionary<string, string> { ["firmware/A.cs"] = text } };
        Assert.Equal(count, new NoConditionalCodeRule().Check(repository).Count());
    }

    [Fact]
    public void The_top_level_holds_what_is_named_and_no_more()
    {
        string[] allowed = ["README.md", ".gitignore", "Directory.Build.props", "Directory.Packages.props", "global.json", "LICENSE", "hil-scripts"];
        string[] refused = ["TODO.md", "docs", "Directory.Build.targets", "build.sh"];
        Assert.Empty(new TopLevelRule().Check(new Repository { TopLevel = allowed }));
        Assert.Equal(refused, new TopLevelRule().Check(new Repository { TopLevel = [.. allowed, .. refused] }).Select(one => one.Split(':')[0]));
    }

    [Fact]
    public void The_solution_lists_every_project_and_none_that_is_gone()
    {
        ProjectFile[] projects = [new ProjectFile(Core, "<Project />"), new ProjectFile("Directory.Build.props", "<Project />")];
        Assert.Empty(new SolutionRule().Check(new Repository { Projects = projects, SolutionProjects = [Core] }));
        Assert.Collection(
            new SolutionRule().Check(new Repository { Projects = projects, SolutionProjects = [Plant] }),
            one => Assert.StartsWith(Core + ": is not in LubeController.sln", one),
            one => Assert.StartsWith("LubeController.sln: lists " + Plant, one));
    }

    [Theory]
    [InlineData("<PackageReference Include=\"A\" />", 0)]
    [InlineData("<PackageReference Include=\"A\" Version=\"1.0.0\" />", 1)]
    [InlineData("<PackageReference Include=\"A\"><Version>1.0.0</Version></PackageReference>", 1)]
    [InlineData("<PackageReference Include=\"A\" VersionOverride=\"1.0.0\" />", 1)]
    [InlineData("<PackageReference Update=\"A\" Version=\"1.0.0\" />", 1)]
    [InlineData("<PackageVersion Include=\"A\" Version=\"1.0.0\" />", 0)]
    public void Package_versions_are_central(string item, int count) => Assert.Equal(
        count,
        Check(new PackageVersionsRule(), new ProjectFile(Plant, $"<Project><ItemGroup>{item}</ItemGroup></Project>")).Count);

    [Fact]
    public void No_project_leaves_the_central_versions() =>
        Assert.Single(Check(new PackageVersionsRule(), new ProjectFile(Plant, "<Project><PropertyGroup><ManagePackageVersionsCentrally>false</ManagePackageVersionsCentrally></PropertyGroup></Project>")));

    [Fact]
    public void Every_project_has_a_lock_file()
    {
        ProjectFile[] projects = [new ProjectFile(Core, "<Project />"), new ProjectFile(Plant, "<Project />")];
        string[] locks = ["firmware/LubeController.Core/packages.lock.json", "host-sim/Plant/packages.lock.json"];
        Assert.Empty(new LockFilesRule().Check(new Repository { Projects = projects, LockFiles = locks }));
        Assert.StartsWith(Plant, Assert.Single(new LockFilesRule().Check(new Repository { Projects = projects, LockFiles = locks[..1] })));
    }

    [Theory]
    [InlineData(Plant, "LubeController.Core", 1)]
    [InlineData(Plant, "System.Runtime", 0)]
    [InlineData(Core, "mscorlib", 0)]
    [InlineData(Core, "System.Runtime", 1)]
    [InlineData(Emulator, "LubeController.Core", 0)]
    [InlineData(Rig, "LubeController.Core", 0)]
    [InlineData(Emulator, "A.Tests", 1)]
    public void What_was_built_agrees_with_the_arrows(string project, string reference, int count)
    {
        ProjectFile[] projects = new[] { Core, Plant, Emulator, Rig, Tests }.Select(path => new ProjectFile(path, "<Project />")).ToArray();
        Dictionary<string, IReadOnlyList<string>> built = projects.ToDictionary(one => one.Path, one => (IReadOnlyList<string>)[]);
        built[project] = [reference];
        Assert.Equal(count, new BuiltReferencesRule().Check(new Repository { Projects = projects, BuiltReferences = built }).Count());
    }

    [Theory]
    [InlineData("A>B B>C A>C", 0)]
    [InlineData("A>B B>A", 1)]
    [InlineData("A>B B>C C>A", 1)]
    [InlineData("A>B B>A C>D D>C B>C", 2)]
    [InlineData("A>A.Inner A.Inner>A", 1)]
    public void Namespaces_of_a_room_use_each_other_one_way(string arrows, int count)
    {
        List<NamespaceUse> uses = arrows.Split(' ').Select(arrow => arrow.Split('>')).Select(pair => new NamespaceUse(pair[0], pair[1], "T")).ToList();
        List<string> found = new NamespaceCyclesRule()
            .Check(new Repository { NamespaceUses = new Dictionary<string, IReadOnlyList<NamespaceUse>> { [Plant] = uses } }).ToList();
        Assert.Equal(count, found.Count);
        Assert.All(found, one => Assert.StartsWith(Plant + ": ", one));
    }

    [Fact]
    public void A_cycle_is_named_by_its_shortest_way()
    {
        var uses = new NamespaceUse[] { new("A", "B", "a.cs"), new("B", "C", "b.cs"), new("C", "A", "c.cs"), new("B", "A", "d.cs") };
        Assert.Equal(
            Plant + ": A uses B (a.cs), B uses A (d.cs); let one of these uses go the other way",
            new NamespaceCyclesRule().Check(new Repository { NamespaceUses = new Dictionary<string, IReadOnlyList<NamespaceUse>> { [Plant] = uses } }).First());
    }

    [Fact]
    public void Uses_of_constants_are_read_from_the_sources()
    {
        var sources = new Dictionary<string, string>
        {
            ["a.cs"] = "using System;\nusing LubeController.X.B;\n\nnamespace LubeController.X.A;\n",
            ["b.cs"] = "using LubeController.Elsewhere;\n\nnamespace LubeController.X.B;\n",
        };
        Assert.Equal([new NamespaceUse("LubeController.X.A", "LubeController.X.B", "a.cs")], NamespaceUses.InSources(sources));
    }

    [Fact]
    public void What_was_not_built_is_not_a_pass() =>
        Assert.Contains("was not built", Assert.Single(Check(new BuiltReferencesRule(), new ProjectFile(Plant, "<Project />"))));

    private static List<string> Check(IArchitectureRule rule, ProjectFile project) =>
        rule.Check(new Repository { Projects = [project] }).ToList();
}
