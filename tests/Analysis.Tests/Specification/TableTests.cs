using System;
using System.Collections.Generic;
using LubeController.Analysis.Specification;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>A table that is not whole, or whose words are unknown, is refused with what would be accepted.</summary>
public sealed class TableTests
{
    private enum Lamp
    {
        Off,
        On,
    }

    private enum Hand
    {
        Up,
        Down,
    }

    [Theory]
    [InlineData("| hand | Off | On |\n| Up | On | |\n| Down | | Off |", null)]
    [InlineData("| hand | On | Off |\n| Up | On | |\n| Down | | Off |", "columns are On | Off; accepted: Off | On")]
    [InlineData("| hand | Off | On |\n| Up | On | |", "rows are Up; accepted: Up | Down")]
    [InlineData("| hand | Off | On |\n| Up | Dim | |\n| Down | | Off |", "'Dim'; accepted: Off; On; maybe")]
    public void A_table_is_read_or_refused(string text, string? refusal)
    {
        Exception? thrown = Record.Exception(() => Parse(text));

        if (refusal is null)
            Assert.Null(thrown);
        else
            Assert.Contains(refusal, Assert.IsType<FormatException>(thrown).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_cell_touches_nothing()
    {
        TransitionTable<Lamp, Hand, LifecycleGuard> table = Parse("| hand | Off | On |\n| Up | On | |\n| Down | maybe | Off |");

        Assert.True(table.Touches(0, 0));
        Assert.False(table.Touches(0, 1));
        Assert.Equal(2, table.Cell(1, 0).Length);
    }

    private static TransitionTable<Lamp, Hand, LifecycleGuard> Parse(string text) => new(
        text,
        lamp => lamp.ToString(),
        hand => hand.ToString(),
        new Dictionary<string, Branch<Lamp, LifecycleGuard>[]>
        {
            ["maybe"] = [new(LifecycleGuard.Active, Lamp.On), new(LifecycleGuard.Gone, null)],
        });
}
