using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>
/// A nested Directory.Build.props takes in the one above it: MSBuild stops at the nearest, and without the outer one the
/// projects below would lose warnings as errors, the banned calls and the lock files. References stand in projects alone.
/// </summary>
public sealed class CommonPropsRule : IArchitectureRule
{
    private const string OuterProps = "$([MSBuild]::GetPathOfFileAbove('Directory.Build.props', '$(MSBuildThisFileDirectory)../'))";

    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        foreach (ProjectFile props in repository.Projects.Where(one => one.IsCommonProps && one.Folder.Length > 0 && !one.Imports.Contains(OuterProps)))
            yield return $"{props.Path}: does not import the Directory.Build.props above it; add <Import Project=\"{OuterProps}\" />";
        foreach (ProjectFile props in repository.Projects.Where(one => !one.IsProject && one.Items("ProjectReference").Any()))
            yield return $"{props.Path}: references a project; write the reference in each project that needs it";
    }
}
