using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Analysis.Specification;

/// <summary>One way a cell can go: to a state, or, for a press that changes nothing, to a refusal.</summary>
/// <param name="Guard">The condition under which this branch is taken; the guards of one cell exclude each other.</param>
/// <param name="Target">The state entered, or null where the press is refused.</param>
internal readonly record struct Branch<TState, TGuard>(TGuard Guard, TState? Target)
    where TState : struct, Enum
    where TGuard : struct, Enum;

/// <summary>
/// A table of states (columns) against events (rows), read from the text that a person reads. A cell's words are a state's
/// name, or words whose branches are given beside the table; an empty cell is "nothing changes".
/// </summary>
internal sealed class TransitionTable<TState, TEvent, TGuard>
    where TState : struct, Enum
    where TEvent : struct, Enum
    where TGuard : struct, Enum
{
    private readonly Branch<TState, TGuard>[,][] _cells;

    /// <summary>Reads a table.</summary>
    /// <param name="text">Rows of cells between bars; the first row names the states.</param>
    /// <param name="stateWords">A state's name.</param>
    /// <param name="eventWords">An event's name.</param>
    /// <param name="cells">What a cell's words mean, where they are not a state's name alone.</param>
    /// <exception cref="FormatException">A row, a column or a cell's words are missing or unknown.</exception>
    internal TransitionTable(
        string text, Func<TState, string> stateWords, Func<TEvent, string> eventWords, Dictionary<string, Branch<TState, TGuard>[]> cells)
    {
        States = Enum.GetValues<TState>();
        Events = Enum.GetValues<TEvent>();
        _cells = new Branch<TState, TGuard>[Events.Count, States.Count][];
        string[][] rows = [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(CellsOf)];
        RequireSame(States.Select(stateWords), rows[0].Skip(1), "columns");
        RequireSame(Events.Select(eventWords), rows.Skip(1).Select(row => row[0]), "rows");
        for (int row = 0; row < Events.Count; row++)
        {
            for (int column = 0; column < States.Count; column++)
                _cells[row, column] = Meaning(rows[row + 1][column + 1], stateWords, cells);
        }
    }

    internal IReadOnlyList<TState> States { get; }

    internal IReadOnlyList<TEvent> Events { get; }

    /// <summary>The branches of one cell; none where nothing changes. Indices are those of the enumerations.</summary>
    internal ReadOnlySpan<Branch<TState, TGuard>> Cell(int row, int column) => _cells[row, column];

    /// <summary>Whether the cell is other than empty.</summary>
    internal bool Touches(int row, int column) => _cells[row, column].Length > 0;

    private static string[] CellsOf(string line) => [.. line.Trim().Trim('|').Split('|').Select(cell => cell.Trim())];

    private static void RequireSame(IEnumerable<string> expected, IEnumerable<string> found, string what)
    {
        string wanted = string.Join(" | ", expected);
        string given = string.Join(" | ", found);
        if (wanted != given)
            throw new FormatException($"The table's {what} are {given}; accepted: {wanted}.");
    }

    private Branch<TState, TGuard>[] Meaning(string words, Func<TState, string> stateWords, Dictionary<string, Branch<TState, TGuard>[]> cells)
    {
        if (words.Length == 0)
            return [];
        if (cells.TryGetValue(words, out Branch<TState, TGuard>[]? branches))
            return branches;
        foreach (TState state in States)
        {
            if (stateWords(state) == words)
                return [new(default, state)];
        }

        throw new FormatException($"A cell says '{words}'; accepted: {string.Join("; ", States.Select(stateWords).Concat(cells.Keys))}.");
    }
}
