using System;
using System.Collections.Generic;
using System.Linq;
using System.Xml.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Firmware is compiled once, against the microcontroller's core library and nothing else.</summary>
public sealed class FirmwareProjectRule : IArchitectureRule
{
    private const string CoreLibrary = "nanoFramework.CoreLibrary";

    private static readonly (string Name, string Value)[] Needed =
    [
        ("TargetFramework", "netstandard2.0"),
        ("NoStdLib", "true"),
        ("NoCompilerStandardLib", "true"),
        ("DisableImplicitFrameworkReferences", "true"),
    ];

    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository) => repository.Projects
        .Where(project => project.IsProject && IsFirmware(project))
        .SelectMany(project =>
        {
            List<ProjectFile> layers = repository.Layers(project).ToList();
            return Properties(project, layers).Concat(References(project, layers.Where(IsFirmware).ToList()));
        });

    private static bool IsFirmware(ProjectFile file) => file.Path.StartsWith("firmware/", StringComparison.Ordinal);

    private static IEnumerable<string> Properties(ProjectFile project, List<ProjectFile> layers)
    {
        string? Value(string name) => layers.Select(layer => layer.Property(name)).LastOrDefault(value => value != null);
        foreach ((string name, string value) in Needed.Where(need => Value(need.Name) != need.Value))
            yield return $"{project.Path}: {name} is {Value(name) ?? "not set"}; it must be {value}";
        foreach (string name in new[] { "TargetFrameworks", "DefineConstants" }.Where(name => Value(name) != null))
            yield return $"{project.Path}: {name} is set; firmware is compiled once, in one way";
    }

    private static IEnumerable<string> References(ProjectFile project, List<ProjectFile> layers)
    {
        IEnumerable<XElement> Items(string kind) => layers.SelectMany(layer => layer.Items(kind));
        List<XElement> packages = Items("PackageReference").ToList();
        foreach (string name in packages.Select(ProjectFile.Include).Where(name => name != CoreLibrary))
            yield return $"{project.Path}: package {name}; only {CoreLibrary} is allowed";
        if (packages.Count(one => ProjectFile.Include(one) == CoreLibrary && ProjectFile.Metadata(one, "PrivateAssets") == "all" && ProjectFile.Metadata(one, "ExcludeAssets") == "all") != 1)
            yield return $"{project.Path}: must reference {CoreLibrary} once, with ExcludeAssets and PrivateAssets \"all\"";
        foreach (string name in Items("Reference").Concat(Items("FrameworkReference")).Select(ProjectFile.Include).Where(name => name != "mscorlib"))
            yield return $"{project.Path}: reference to {name}; only mscorlib is allowed";
    }
}
