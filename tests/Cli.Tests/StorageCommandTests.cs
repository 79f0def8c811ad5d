using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Analysis.PowerCuts;
using LubeController.Emulator.Storage;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

/// <summary>The commands on power cuts and logbook: what they refuse.</summary>
public sealed class StorageCommandTests
{
    [Theory]
    [InlineData("power-cuts --hours 0", "--hours is '0': give a whole number from 1 to 1000.")]
    [InlineData("power-cuts --jobs many", "--jobs is 'many': give a whole number from 1 to 64.")]
    [InlineData("power-cuts --jobs +4", "--jobs is '+4': give a whole number from 1 to 64.")]
    [InlineData("explore --jobs +4 x", "--jobs is '+4': give a whole number from 1 to 64.")]
    [InlineData("power-cuts nowhere.settings.yaml", "nowhere.settings.yaml")]
    [InlineData("logbook nowhere.yaml", "SCRIPT 'nowhere.yaml' is missing")]
    [InlineData("logbook nowhere.yaml --clock yesterday", "--clock is 'yesterday': give a time of day after 1970 and before 2106")]
    public void What_cannot_be_done_is_refused(string arguments, string complaint)
    {
        using var session = new Session();
        Assert.Equal(2, session.Run(arguments.Split(' ')));
        Assert.Contains(complaint, session.Errors, StringComparison.Ordinal);
        Assert.Equal("", session.Output);
    }

    [Fact]
    public void A_logbook_that_cannot_be_written_is_refused_by_option()
    {
        using var session = new Session();
        string script = session.Script("a.yaml", "");
        Assert.Equal(2, session.Run("logbook", script, "--csv", script + "/no.csv"));
        Assert.Contains("--csv", session.Errors, StringComparison.Ordinal);
        Assert.Equal("", session.Output);
    }

    [Theory]
    [InlineData(0, 0, "everything promised holds")]
    [InlineData(1, 1, "something promised does not hold")]
    public void The_exit_code_says_whether_every_cut_leaves_what_is_promised(int violations, int expected, string lastLine)
    {
        Dictionary<WriteKind, long> none = Enum.GetValues<WriteKind>().ToDictionary(kind => kind, _ => 0L);
        var result = new PowerCutResult
        {
            Writes = none,
            WritesCut = none,
            Cuts = none,
            MostRestBackMs = 0,
            Doses = 0,
            Starts = 1,
            Violations = [.. Enumerable.Range(0, violations).Select(write => new PowerCutViolation(write, WriteKind.StateEvent, 3, TearRest.Old, "an invented violation"))],
        };
        using var output = new StringWriter { NewLine = "\n" };
        Assert.Equal(expected, (int)PowerCutsCommand.Report(result, 1, new CommandHost(SampleBench.Make(), output, TextWriter.Null, null)));
        Assert.EndsWith($"\n{lastLine}\n", output.ToString(), StringComparison.Ordinal);
    }
}
