using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>The solution lists every project, once, and none that is not there.</summary>
public sealed class SolutionRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        List<string> projects = repository.Projects.Where(project => project.IsProject).Select(project => project.Path).ToList();
        foreach (string missing in projects.Except(repository.SolutionProjects))
            yield return $"{missing}: is not in LubeController.sln; run 'dotnet sln add {missing}'";
        foreach (string stale in repository.SolutionProjects.Except(projects))
            yield return $"LubeController.sln: lists {stale}, which is not there; run 'dotnet sln remove {stale}'";
    }
}
