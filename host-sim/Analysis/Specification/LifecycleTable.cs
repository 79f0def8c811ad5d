using System.Collections.Generic;
using static LubeController.Analysis.Specification.LifecycleGuard;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The lifecycle of an alarm per ISA-18.2 and IEC 62682, as one table. The last three columns change annunciation only:
/// whether the alarm is active or latched goes on beside it. An empty cell is "nothing changes".
/// </summary>
internal static class LifecycleTable
{
    private const string Text =
        """
        | event                  | normal               | unacknowledged           | acknowledged         | returned unacknowledged | latched              | shelved                   | suppressed by design      | out of service            |
        | condition begins       | unacknowledged       |                          |                      | unacknowledged          | unacknowledged       |                           |                           |                           |
        | condition ends         |                      | returned unacknowledged  | latched, or normal   |                         |                      |                           |                           |                           |
        | acknowledge            |                      | acknowledged, or latched |                      | latched, or normal      |                      |                           |                           |                           |
        | reset clears the latch |                      | returned unacknowledged  |                      |                         | normal               |                           |                           |                           |
        | shelve                 | shelved              | shelved                  | shelved              | shelved                 | shelved              |                           | shelved                   |                           |
        | shelving over          |                      |                          |                      |                         |                      | unacknowledged, or normal |                           |                           |
        | its cause stands       | suppressed by design | suppressed by design     | suppressed by design | suppressed by design    | suppressed by design |                           |                           |                           |
        | its cause is gone      |                      |                          |                      |                         |                      |                           | unacknowledged, or normal |                           |
        | take out of service    | out of service       | out of service           | out of service       | out of service          | out of service       | out of service            | out of service            |                           |
        | return to service      |                      |                          |                      |                         |                      |                           |                           | unacknowledged, or normal |
        """;

    private static readonly Dictionary<string, Branch<Lifecycle, LifecycleGuard>[]> Cells = new()
    {
        ["latched, or normal"] = [new(Latched, Lifecycle.Latched), new(NotLatched, Lifecycle.Normal)],
        ["acknowledged, or latched"] = [new(Active, Lifecycle.Acknowledged), new(LatchOnly, Lifecycle.Latched)],
        ["unacknowledged, or normal"] = [new(Stands, Lifecycle.Unacknowledged), new(Gone, Lifecycle.Normal)],
    };

    /// <summary>The table as each alarm's machine obeys it.</summary>
    internal static TransitionTable<Lifecycle, LifecycleEvent, LifecycleGuard> Rules { get; } =
        new(Text, LifecycleWords.Of, LifecycleWords.Of, Cells);

    /// <summary>The table with one cell changed.</summary>
    /// <param name="happening">The row.</param>
    /// <param name="state">The column.</param>
    /// <param name="words">What the cell is to say: words that the table knows.</param>
    internal static TransitionTable<Lifecycle, LifecycleEvent, LifecycleGuard> With(LifecycleEvent happening, Lifecycle state, string words)
    {
        string[] rows = Text.Split('\n');
        string[] cells = rows[(int)happening + 1].Trim().Trim('|').Split('|');
        cells[(int)state + 1] = words;
        rows[(int)happening + 1] = $"|{string.Join('|', cells)}|";
        return new(string.Join('\n', rows), LifecycleWords.Of, LifecycleWords.Of, Cells);
    }
}
