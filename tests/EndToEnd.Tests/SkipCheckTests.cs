using System;
using System.Diagnostics;
using System.IO;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary><c>tests/check-skips</c>, by which a run of continuous integration fails where a test was skipped that the list does not allow.</summary>
public sealed class SkipCheckTests
{
    private const string Report = """
        <testsuites tests="3"><testsuite name="/a/A.Tests.dll" tests="3" skipped="2"><testcase name="A.Tests.Sum.Adds" classname="A.Tests.Sum" />
        <testcase name="A.Tests.Sum.Agrees(with: &quot;a &gt; b&quot;)" time="0" classname="A.Tests.Sum"><skipped>needs abacus &amp; beads</skipped></testcase>
        <testcase name="A.Tests.Sum.Runs" time="0" classname="A.Tests.Sum"><skipped>needs legs</skipped></testcase></testsuite></testsuites>
        """;

    private const string Agrees = "A.Tests.Sum.Agrees: needs abacus & beads";

    private const string Runs = "A.Tests.Sum.Runs: needs legs";

    [Theory]
    [InlineData("", new[] { Agrees, Runs })]
    [InlineData(Agrees, new[] { Runs })]
    [InlineData(Agrees + "\n# " + Runs, new[] { Runs })]
    [InlineData(Agrees + "\nA.Tests.Sum.Runs: needs arms", new[] { Runs })]
    [InlineData(Agrees + "\nA.Tests.Sum: needs legs", new[] { Runs })]
    [InlineData(Runs + "\n# a comment\n\n" + Agrees, new string[0])]
    public void A_skip_that_is_not_listed_with_its_reason_is_named_and_fails(string list, string[] unlisted)
    {
        (int code, string errors) = Check(list, counted: 2, Report);

        Assert.Equal(unlisted.Length > 0 ? 1 : 0, code);
        Assert.Equal(unlisted, Array.ConvertAll(errors.Split('\n', StringSplitOptions.RemoveEmptyEntries)[(unlisted.Length > 0 ? 1 : 0)..], line => line.Trim()));
    }

    [Theory]
    [InlineData(3, Report, "the reports hold 2 skipped tests, the run counted 3")]
    [InlineData(0, Report, "the reports hold 2 skipped tests, the run counted 0")]
    [InlineData(0, "{}", "is not a JUnit report")]
    [InlineData(0, null, "no report was written")]
    public void A_report_that_is_missing_or_not_whole_is_no_pass(int counted, string? report, string complaint)
    {
        (int code, string errors) = Check(Agrees + "\n" + Runs, counted, report);

        Assert.Equal(2, code);
        Assert.Contains(complaint, errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Continuous_integration_asks_for_it()
    {
        Assert.Contains("tests/run strict", File.ReadAllText(Path.Combine(Repository.Root, ".ci", "run")), StringComparison.Ordinal);
        Assert.Contains("tests/check-skips tests/expected-skips.txt", File.ReadAllText(Path.Combine(Repository.Root, "tests", "run")), StringComparison.Ordinal);
    }

    private static (int Code, string Errors) Check(string list, int counted, string? report)
    {
        Assert.SkipUnless(ExternalTool.Bash.IsInstalled, ExternalTool.Bash.Reason);
        using var folder = new TempFolder();
        folder.Write("list.txt", list + "\n");
        string[] reports = report == null ? [] : [folder.Write("report.xml", report)];
        var start = new ProcessStartInfo("bash", [Path.Combine(Repository.Root, "tests", "check-skips"), folder.At("list.txt"), $"{counted}", .. reports]) { RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, errors);
    }
}
