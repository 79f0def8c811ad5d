using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Drives the core through every cell of the phase table in PHASES.md.</summary>
public sealed class PhaseTableTests
{
    private static readonly MarkdownTable Table = MarkdownTable.Read("event");

    public static TheoryData<string, string, string> Cells()
    {
        var cells = new TheoryData<string, string, string>();
        foreach (IReadOnlyList<string> row in Table.Rows)
        {
            for (int column = 1; column < Table.Head.Count; column++)
                cells.Add(row[0], Table.Head[column], row[column]);
        }

        return cells;
    }

    [Fact]
    public void The_table_has_every_phase_and_every_event_once()
    {
        Assert.Equal(
            ["event", "rest", "dose", "retry pause", "prime", "stopped", "failed", "output test"],
            Table.Head);
        Assert.Equal(
            PhaseEvent.All.Keys.Order(StringComparer.Ordinal),
            Table.Rows.Select(row => row[0]).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void The_core_does_what_the_cell_says(string name, string phaseName, string cell)
    {
        PhaseEvent row = PhaseEvent.All[name];
        Phase phase = PhaseOf(phaseName);
        Phase[] origins = phase == Phase.Prime && cell == "origin" ? [Phase.Rest, Phase.Stopped, Phase.Failed] : [Phase.Rest];
        foreach (Phase origin in origins)
            Check(PhaseRoad.To(phase, row, origin), row, cell, phase, origin);
    }

    private static void Check(CoreBench bench, PhaseEvent row, string cell, Phase phase, Phase origin)
    {
        row.Circumstance?.Invoke(bench);
        if (cell == "n/a")
        {
            Assert.NotNull(row.Circumstance);
            Assert.NotEqual(phase, bench.Phase);
            return;
        }

        Assert.Equal(phase, bench.Phase);
        bench.ClearLog();
        int refused = bench.Core.PressesRefused;
        row.Cause(bench);
        Phase expected = cell switch
        {
            "" or "refused" => phase,
            "origin" => origin,
            _ => PhaseOf(cell),
        };
        Assert.Equal(expected, bench.Phase);
        Assert.Equal(cell == "refused" ? refused + 1 : refused, bench.Core.PressesRefused);
        Assert.Equal(cell == "refused", bench.Log.Any(line => line.EndsWith("refused", StringComparison.Ordinal)));
        if (expected == phase)
            Assert.Empty(bench.Phases);
    }

    private static Phase PhaseOf(string name) =>
        Enum.GetValues<Phase>().Single(phase => EventText.PhaseName(phase) == name);
}
