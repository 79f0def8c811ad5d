using System.Collections.Generic;
using System.Linq;
using System.Xml.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>Package versions stand in Directory.Packages.props alone.</summary>
public sealed class PackageVersionsRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        foreach (ProjectFile project in repository.Projects)
        {
            foreach (XElement package in project.Items("PackageReference").Where(HasVersion))
                yield return $"{project.Path}: gives {ProjectFile.Include(package)} a version; versions stand in Directory.Packages.props";
            if (project.Property("ManagePackageVersionsCentrally") is string central && central != "true")
                yield return $"{project.Path}: ManagePackageVersionsCentrally is {central}; it must be true";
        }
    }

    private static bool HasVersion(XElement package) =>
        ProjectFile.Metadata(package, "Version") != null || ProjectFile.Metadata(package, "VersionOverride") != null;
}
