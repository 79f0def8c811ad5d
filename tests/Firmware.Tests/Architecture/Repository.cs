using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>What the architecture rules look at. Paths start at the root of the repository and have forward slashes.</summary>
public sealed record Repository
{
    /// <summary>Every project, and every props and targets file.</summary>
    public IReadOnlyList<ProjectFile> Projects { get; init; } = [];

    /// <summary>A project behind the Directory.Build.props files above it, outermost first: what is written later counts.</summary>
    /// <param name="project">The project.</param>
    public IEnumerable<ProjectFile> Layers(ProjectFile project) => Projects
        .Where(one => one.IsCommonProps && (one.Folder.Length == 0 || project.Path.StartsWith(one.Folder + "/", StringComparison.Ordinal)))
        .OrderBy(one => one.Folder.Length)
        .Append(project);

    /// <summary>Projects that the solution lists.</summary>
    public IReadOnlyCollection<string> SolutionProjects { get; init; } = [];

    /// <summary>Every packages.lock.json.</summary>
    public IReadOnlyCollection<string> LockFiles { get; init; } = [];

    /// <summary>Files and folders of the top level, ignored ones left out.</summary>
    public IReadOnlyCollection<string> TopLevel { get; init; } = [];

    /// <summary>Text of the source files under firmware/, by path.</summary>
    public IReadOnlyDictionary<string, string> FirmwareSources { get; init; } = new Dictionary<string, string>();

    /// <summary>Names of the assemblies that each built DLL references, by path of its project. Tests are left out.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> BuiltReferences { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>Which namespaces of each built assembly use which others of it, by path of its project. Tests are left out.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<NamespaceUse>> NamespaceUses { get; init; } = new Dictionary<string, IReadOnlyList<NamespaceUse>>();
}
