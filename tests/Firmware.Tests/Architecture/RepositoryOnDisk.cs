using System;
using System.Collections.Generic;
using System.IO;
using System.IO.Enumeration;
using System.Linq;
using System.Text.RegularExpressions;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Reads the repository that these tests were built in.</summary>
public static partial class RepositoryOnDisk
{
    private const string Solution = "LubeController.sln";

    /// <summary>The repository.</summary>
    public static Repository Read()
    {
        string root = FindRoot();
        List<ProjectFile> projects = Files(root, "*.csproj").Concat(Files(root, "*.props")).Concat(Files(root, "*.targets"))
            .Select(path => new ProjectFile(path, File.ReadAllText(Path.Combine(root, path))))
            .ToList();
        return new Repository
        {
            Projects = projects,
            SolutionProjects = SolutionEntry().Matches(File.ReadAllText(Path.Combine(root, Solution)))
                .Select(match => match.Groups["path"].Value.Replace('\\', '/')).ToList(),
            LockFiles = Files(root, "packages.lock.json").ToList(),
            TopLevel = TopLevel(root).ToList(),
            FirmwareSources = Files(root, "*.cs").Where(path => path.StartsWith("firmware/", StringComparison.Ordinal))
                .ToDictionary(path => path, path => File.ReadAllText(Path.Combine(root, path))),
            BuiltReferences = projects.Select(project => (project.Path, Built: Built(root, project))).Where(pair => pair.Built != null)
                .ToDictionary(pair => pair.Path, pair => References(pair.Built!)),
            NamespaceUses = projects.Where(project => Rooms.Of(project.Path) is not (Rooms.Tests or Rooms.Support))
                .Select(project => (Project: project, Built: Built(root, project))).Where(pair => pair.Built != null)
                .ToDictionary(pair => pair.Project.Path, pair => Uses(root, pair.Project, pair.Built!)),
        };
    }

    private static string FindRoot()
    {
        for (string? folder = AppContext.BaseDirectory; folder != null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, Solution)))
                return folder;
        }

        throw new InvalidOperationException($"No {Solution} in {AppContext.BaseDirectory} or above it: run the tests where they were built.");
    }

    private static IEnumerable<string> Files(string root, string pattern) => Directory.EnumerateFiles(root, pattern, SearchOption.AllDirectories)
        .Select(path => Path.GetRelativePath(root, path).Replace(Path.DirectorySeparatorChar, '/'))
        .Where(path => !path.Split('/').Any(part => part is "bin" or "obj" or "StrykerOutput" or ".git"))
        .Order(StringComparer.Ordinal);

    private static IEnumerable<string> TopLevel(string root)
    {
        List<string> ignored = File.ReadLines(Path.Combine(root, ".gitignore")).Select(line => line.Trim().Trim('/')).Where(line => line.Length > 0).ToList();
        return Directory.EnumerateFileSystemEntries(root).Select(path => Path.GetFileName(path))
            .Where(name => !ignored.Any(pattern => FileSystemName.MatchesSimpleExpression(pattern, name)));
    }

    /// <summary>The DLL of a project in the configuration that these tests were built in, or null.</summary>
    private static string? Built(string root, ProjectFile project)
    {
        string configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        string folder = Path.Combine(root, project.Folder, "bin", configuration);
        return project.IsProject && Directory.Exists(folder)
            ? Directory.EnumerateDirectories(folder).Select(one => Path.Combine(one, project.AssemblyName + ".dll")).FirstOrDefault(File.Exists)
            : null;
    }

    private static IReadOnlyList<string> References(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return module.AssemblyReferences.Select(reference => reference.Name).ToList();
    }

    private static IReadOnlyList<NamespaceUse> Uses(string root, ProjectFile project, string built)
    {
        using var module = ModuleDefinition.ReadModule(built);
        Dictionary<string, string> sources = Files(Path.Combine(root, project.Folder), "*.cs")
            .ToDictionary(path => project.Folder + "/" + path, path => File.ReadAllText(Path.Combine(root, project.Folder, path)));
        return NamespaceUses.InCode(module).Concat(NamespaceUses.InSources(sources)).ToList();
    }

    [GeneratedRegex("= \"[^\"]*\", \"(?<path>[^\"]*\\.csproj)\"")]
    private static partial Regex SolutionEntry();
}
