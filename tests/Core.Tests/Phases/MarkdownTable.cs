using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LubeController.Core.Tests;

/// <summary>A table of a Markdown page, found by the first word of its head; cells trimmed, back quotes removed.</summary>
internal sealed class MarkdownTable
{
    private MarkdownTable(IReadOnlyList<string> head, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        Head = head;
        Rows = rows;
    }

    public IReadOnlyList<string> Head { get; }

    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }

    public static MarkdownTable Read(string firstWord)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "PHASES.md"));
        int start = Array.FindIndex(lines, line => line.StartsWith($"| {firstWord} |", StringComparison.Ordinal));
        if (start < 0)
            throw new InvalidDataException($"PHASES.md: no table begins with the column '{firstWord}'");
        IReadOnlyList<string> head = Cells(lines[start]);
        var rows = lines.Skip(start + 2).TakeWhile(line => line.StartsWith('|')).Select(Cells).ToList();
        foreach (IReadOnlyList<string> row in rows)
        {
            if (row.Count != head.Count)
                throw new InvalidDataException($"PHASES.md: the row '{row[0]}' has {row.Count} cells, its head {head.Count}");
        }

        return new MarkdownTable(head, rows);
    }

    private static IReadOnlyList<string> Cells(string line) =>
        line.Trim()[1..^1].Split('|').Select(cell => cell.Trim().Replace("`", "", StringComparison.Ordinal)).ToList();
}
