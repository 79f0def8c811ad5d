using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Project references go along the arrows, and every project lies in a room.</summary>
public sealed class ArrowsRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository) =>
        repository.Projects.Where(project => project.IsProject).SelectMany(CheckProject);

    private static IEnumerable<string> CheckProject(ProjectFile project)
    {
        if (Rooms.Of(project.Path) is not string room)
        {
            yield return $"{project.Path}: lies in no room; move it, or draw the room and its arrows in {nameof(Rooms)}";
            yield break;
        }

        foreach (string target in project.ProjectReferences)
        {
            bool mutation = project.Path.StartsWith(Rooms.MutationFolder, StringComparison.Ordinal)
                && target.StartsWith(Rooms.MutationFolder, StringComparison.Ordinal);
            if (!mutation && (Rooms.Of(target) is not string to || !Rooms.MayReference(room, to)))
                yield return $"{project.Path}: references {target}; from {room} allowed: {Rooms.Allowed(room)}";
        }
    }
}
