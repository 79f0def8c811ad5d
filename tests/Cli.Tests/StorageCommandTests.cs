using System;
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
}
