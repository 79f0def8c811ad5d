using System;
using System.Collections.Generic;
using System.Linq;
using System.Xml.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>A project or props file, as far as the rooms are concerned.</summary>
public sealed class ProjectFile
{
    private readonly XElement _root;

    /// <summary>Reads a project.</summary>
    /// <param name="path">Path from the root of the repository, with forward slashes.</param>
    /// <param name="xml">Its text.</param>
    public ProjectFile(string path, string xml)
    {
        Path = path;
        _root = XDocument.Parse(xml).Root!;
    }

    /// <summary>Path from the root of the repository, with forward slashes.</summary>
    public string Path { get; }

    /// <summary>Folder of the project, from the root of the repository.</summary>
    public string Folder => Path.Contains('/') ? Path[..Path.LastIndexOf('/')] : "";

    /// <summary>Name of the assembly that is built.</summary>
    public string AssemblyName => Property("AssemblyName") ?? System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>Whether it is a project, and not a props or targets file.</summary>
    public bool IsProject => Path.EndsWith(".csproj", StringComparison.Ordinal);

    /// <summary>Whether it is a props file that every project below it takes.</summary>
    public bool IsCommonProps => System.IO.Path.GetFileName(Path) == "Directory.Build.props";

    /// <summary>Paths, from the root of the repository, of the projects it references.</summary>
    public IEnumerable<string> ProjectReferences => Items("ProjectReference").Select(item => Resolve(Include(item)));

    /// <summary>Its items of a kind.</summary>
    public IEnumerable<XElement> Items(string kind) => _root.Descendants().Where(one => one.Name.LocalName == kind && one.Parent!.Name.LocalName == "ItemGroup");

    /// <summary>What an item includes, updates or is about.</summary>
    public static string Include(XElement item) => Metadata(item, "Include") ?? Metadata(item, "Update") ?? "";

    /// <summary>An item's metadata, written as attribute or as element, or null.</summary>
    public static string? Metadata(XElement item, string name) =>
        item.Attribute(name)?.Value ?? item.Elements().FirstOrDefault(one => one.Name.LocalName == name)?.Value;

    /// <summary>A property's value as it was written last, or null.</summary>
    public string? Property(string name) => _root.Descendants()
        .LastOrDefault(one => one.Name.LocalName == name && one.Parent!.Name.LocalName == "PropertyGroup")?.Value.Trim();

    /// <summary>Files that are imported by name.</summary>
    public IEnumerable<string> Imports => _root.Descendants().Where(one => one.Name.LocalName == "Import").Select(one => Metadata(one, "Project") ?? "");

    private string Resolve(string relative)
    {
        string full = System.IO.Path.GetFullPath(System.IO.Path.Combine("/", Folder, relative.Replace('\\', '/')), "/");
        return System.IO.Path.GetRelativePath("/", full).Replace(System.IO.Path.DirectorySeparatorChar, '/');
    }
}
