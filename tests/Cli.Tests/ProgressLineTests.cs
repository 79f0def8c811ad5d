using System.Collections.Generic;
using LubeController.Analysis.Exploration;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed class ProgressLineTests
{
    private const string Erase = "\r\u001b[K";

    private readonly List<string> _written = [];

    [Fact]
    public void It_is_drawn_over_itself_and_erased_once_before_something_else_is_printed()
    {
        int done = 0;
        using var line = new ProgressLine(_written.Add, () => $"{++done} of 9");
        line.Draw();
        line.Draw();
        line.Clear();
        line.Clear();
        Assert.Equal([Erase + "1 of 9", Erase + "2 of 9", Erase], _written);
    }

    [Fact]
    public void It_is_erased_at_the_end_and_not_drawn_after_it()
    {
        var line = new ProgressLine(_written.Add, () => "half");
        line.Draw();
        line.Dispose();
        line.Draw();
        Assert.Equal([Erase + "half", Erase], _written);
    }

    [Fact]
    public void A_search_is_shown_by_depth_states_and_what_is_left() =>
        Assert.Equal("depth 3: 40 states, 500 transitions, 6 to go on from", ExploreCommand.Line(new ExplorationLevel(3, 40, 500, 6)));
}
