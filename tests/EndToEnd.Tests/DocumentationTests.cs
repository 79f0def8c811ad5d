using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Emulator;
using LubeController.Emulator.Platform;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Sensors;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>Documentation promises only what is there, and keeps nothing back.</summary>
public sealed class DocumentationTests
{
    private static string Page => File.ReadAllText(Path.Combine(Repository.Root, "hil-scripts", "README.md"));

    [Fact]
    public void The_page_on_scripts_lists_every_fault()
    {
        string[] listed = Section("## Faults").Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('`')[1]).ToArray();

        Assert.Equal(BenchFaults.All.Select(fault => fault.Name), listed);
    }

    [Fact]
    public void The_page_on_scripts_lists_every_action_and_demand()
    {
        Assert.All(ScriptKeys.Actions, action => Assert.Contains($"`{action}:", Section("## Steps"), StringComparison.Ordinal));
        Assert.All(ScriptKeys.Demands, demand => Assert.Contains($"`{demand}:", Section("## Expectations"), StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_on_scripts_lists_every_sort_of_signal()
    {
        string[] sorts = [.. Signals().Select(signal => signal.Split('.')[0]).Distinct()];

        Assert.Contains("alarm", sorts);
        Assert.Contains("injector", sorts);
        Assert.Contains("supervisory", sorts);
        Assert.All(sorts, sort => Assert.Contains($"`{sort}", Section("## Conditions"), StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_on_scripts_lists_every_output_pressure_and_volume()
    {
        string[] signals = [.. Signals().Where(signal => signal.Split('.')[0] is "output" or "pressure" or "volume").Distinct()];

        Assert.Empty(new[] { "output.vent-valve", "pressure.line", "pressure.end", "pressure.transmitter", "pressure.gauge", "volume.leaked" }.Except(signals));
        Assert.All(signals, signal => Assert.Matches($"[ `]{signal.Split('.')[1]}`", Section("## Conditions")));
    }

    [Fact]
    public void The_page_on_scripts_lists_every_pin() =>
        Assert.All(PlugPin.All, pin => Assert.Contains($"| {pin.Plug} | {pin.Pin} | {pin.Colour} | {pin.Carries} |", Section("## Wiring"), StringComparison.Ordinal));

    [Fact]
    public void The_page_on_scripts_lists_every_group_of_a_plant_file()
    {
        Assert.All(FileKeys.Plant.Keys.Except(["plant", "based-on", "wiring"]), key => Assert.Contains($"`{key}`", Section("## Plants"), StringComparison.Ordinal));
        string[] plants = [.. Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "plants"), "*.plant.yaml").Select(path => Path.GetFileName(path).Split('.')[0])];
        Assert.NotEmpty(plants);
        Assert.All(
            plants,
            plant => Assert.Contains($"| `{plant}` |", Section("## Plants"), StringComparison.Ordinal));
    }

    [Fact]
    public void Every_fault_that_a_shipped_plant_can_have_has_a_script()
    {
        PlantDescription[] plants = [.. Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "plants"), "*.plant.yaml").Select(path => PlantReader.Read(path, new ProblemList())!.Plant)];
        string[] set = Repository.Scripts("faults").Concat(Repository.Scripts("running")).Concat(Repository.WiringScripts)
            .SelectMany(path => Repository.Read(path).Steps)
            .Select(step => step.Action).OfType<Scripts.Steps.SetFault>().Select(fault => fault.Kind.Name).Distinct().ToArray();

        string[] possible = [.. FaultCatalogue.All.Where(fault => plants.Any(plant => FaultCatalogue.PartNames(fault, plant).Count > 0)).Select(fault => fault.Name), .. BoardFaults.All.Select(fault => fault.Name)];
        Assert.True(possible.Length >= 36, $"only {possible.Length} faults are possible");
        Assert.Empty(possible.Except(set));
    }

    /// <summary>The first command of the README, as it stands there, names a script that is there.</summary>
    [Fact]
    public void The_first_command_of_the_readme_replays_a_script_that_exists()
    {
        string readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        string command = readme.Split('\n').First(line => line.StartsWith("dotnet run", StringComparison.Ordinal));

        Assert.EndsWith("-- replay hil-scripts/faults/outlet-blocked.yaml", command, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Repository.Root, command.Split(' ')[^1])));
    }

    [Fact]
    public void Every_picture_that_the_readme_shows_is_there_and_none_is_left_over()
    {
        string[] shown = [.. Regex.Matches(File.ReadAllText(Path.Combine(Repository.Root, "README.md")), @"!\[[^\]]+\]\(([^)]+)\)").Select(picture => picture.Groups[1].Value)];
        string[] there = [.. Directory.GetFiles(Path.Combine(Repository.Root, "host-sim", "pictures")).Select(path => "host-sim/pictures/" + Path.GetFileName(path))];

        Assert.NotEmpty(shown);
        Assert.Equal(shown.Concat(shown.Select(picture => Path.ChangeExtension(picture, ".png"))).Distinct().Order(StringComparer.Ordinal), there.Order(StringComparer.Ordinal));
    }

    /// <summary>Names of all signals of all plants that the scripts that ship run on.</summary>
    private static IEnumerable<string> Signals() => Repository.Scripts("faults").Concat(Repository.Scripts("running")).Concat(Repository.WiringScripts)
        .SelectMany(path => Bench.DefineSignals(Repository.Read(path).Plant).Signals).Select(signal => signal.Name);

    private static string Section(string heading)
    {
        string[] parts = Page.Split(heading + "\n");
        Assert.Equal(2, parts.Length);
        return parts[1].Split("\n## ")[0];
    }
}
