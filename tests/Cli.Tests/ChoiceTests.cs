using Xunit;

namespace LubeController.Cli.Tests;

/// <summary>What is one of a few words.</summary>
public sealed class ChoiceTests
{
    [Theory]
    [InlineData("alarms --format html", "alarms", "--format is 'html': give one of text, markdown.")]
    [InlineData("faults --format html", "faults", "--format is 'html': give one of text, csv, json, markdown.")]
    [InlineData("graph phases --format svg", "graph", "--format is 'svg': give one of mermaid, dot.")]
    [InlineData("graph phase", "graph", "WHAT is 'phase': give one of phases, lifecycle.")]
    public void Another_word_is_refused_on_one_line_that_names_it_and_where_it_stands(string arguments, string command, string complaint)
    {
        using var session = new Session();
        Assert.Equal(2, session.Run(arguments.Split(' ')));
        Assert.Equal([$"lubebench: {complaint} 'lubebench {command} --help' lists what is known."], session.ErrorLines);
        Assert.Equal("", session.Output);
    }
}
