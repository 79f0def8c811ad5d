using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>No project compiles sources from outside its own folder: everyone takes the DLL. Mutation testing alone may.</summary>
public sealed class OneBuildRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        foreach (ProjectFile project in repository.Projects.Where(one => !one.Path.StartsWith(Rooms.MutationFolder, StringComparison.Ordinal)))
        {
            foreach (string include in project.Items("Compile").Select(ProjectFile.Include).Where(LeavesFolder))
                yield return $"{project.Path}: compiles {include}; reference the project instead";
            foreach (string import in project.Imports.Where(import => import.EndsWith(".projitems", StringComparison.Ordinal)))
                yield return $"{project.Path}: imports the shared sources of {import}; reference a project instead";
        }
    }

    private static bool LeavesFolder(string include) => include.Contains("..", StringComparison.Ordinal)
        || include.Contains("$(", StringComparison.Ordinal)
        || include.StartsWith('/')
        || include.Contains(':', StringComparison.Ordinal);
}
