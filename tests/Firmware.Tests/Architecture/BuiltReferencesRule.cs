using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>
/// The DLLs that were built agree with the arrows. Projects hand on what they reference, so a room may use what it can
/// reach along the arrows, and no more; firmware may use mscorlib besides, and nothing else.
/// </summary>
public sealed class BuiltReferencesRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        Dictionary<string, string?> roomOf = repository.Projects
            .Where(project => project.IsProject)
            .ToDictionary(project => project.AssemblyName, project => Rooms.Of(project.Path));
        foreach (ProjectFile project in repository.Projects.Where(one => one.IsProject && Rooms.Of(one.Path) is not (null or Rooms.Tests)))
        {
            if (!repository.BuiltReferences.TryGetValue(project.Path, out IReadOnlyList<string>? references))
            {
                yield return $"{project.Path}: {project.AssemblyName}.dll was not built in this configuration; build LubeController.sln first";
                continue;
            }

            foreach (string name in references.Where(name => !IsAllowed(project, name, roomOf)))
                yield return $"{project.Path}: {project.AssemblyName}.dll uses {name}; no arrow leads from {Rooms.Of(project.Path)} there";
        }
    }

    private static bool IsAllowed(ProjectFile project, string name, Dictionary<string, string?> roomOf)
    {
        if (roomOf.TryGetValue(name, out string? target))
            return target != null && Rooms.MayReach(Rooms.Of(project.Path)!, target);
        return name == "mscorlib" || !project.Path.StartsWith("firmware/", StringComparison.Ordinal);
    }
}
