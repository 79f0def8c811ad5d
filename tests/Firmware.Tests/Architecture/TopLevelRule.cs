using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>The top level holds what a newcomer looks for, and nothing else.</summary>
public sealed partial class TopLevelRule : IArchitectureRule
{
    private static readonly string[] Names =
        ["README.md", "DEVELOPERS.md", "LubeController.sln", "firmware", "host-sim", "tests", "hil-scripts", "LICENSE", "global.json"];

    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository) => repository.TopLevel
        .Where(name => !name.StartsWith('.') && !Names.Contains(name, StringComparer.Ordinal) && !CommonProps().IsMatch(name))
        .Select(name => $"{name}: does not belong at the top level; allowed are {string.Join(", ", Names)}, dot-files and Directory.*.props");

    [GeneratedRegex(@"^Directory\.[A-Za-z]+\.props$")]
    private static partial Regex CommonProps();
}
