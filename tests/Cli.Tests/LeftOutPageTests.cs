using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Analysis.Lockstep;
using LubeController.Core;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

/// <summary>What the page for contributors says that no lockstep compares.</summary>
public sealed partial class LeftOutPageTests
{
    [Fact]
    public void Every_setting_that_lockstep_leaves_out_is_told_and_no_other()
    {
        Match told = LeavesOut().Match(File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md")));
        Assert.True(told.Success, "DEVELOPERS.md does not say what lockstep leaves out");
        Assert.Equal(
            LockstepSettings.LeftOut.Select(left => SettingTable.Spec(left.Field).Name).Order(StringComparer.Ordinal),
            told.Groups["name"].Captures.Select(name => name.Value).Order(StringComparer.Ordinal));
    }

    [GeneratedRegex(@"Lockstep\s+leaves\s+out\s+what\s+`LockstepSettings\.LeftOut`\s+lists:(?:[^`.]*`(?<name>[a-z-]+)`)+[^`.]*\.")]
    private static partial Regex LeavesOut();
}
