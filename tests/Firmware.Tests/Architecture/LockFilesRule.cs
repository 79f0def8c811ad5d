using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Every project has its lock file.</summary>
public sealed class LockFilesRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository) => repository.Projects
        .Where(project => project.IsProject && !repository.LockFiles.Contains(project.Folder + "/packages.lock.json"))
        .Select(project => $"{project.Path}: has no packages.lock.json beside it; run 'dotnet restore' and commit it");
}
