using System.Collections.Generic;
using static LubeController.Analysis.Specification.PhaseGuard;

namespace LubeController.Analysis.Specification;

/// <summary>
/// The phase table: the control rules' table, cell by cell, and what the cells with a condition mean. An empty cell is
/// "nothing changes"; a refused press is logged and does nothing else. One cell is safer than the rules' own: an interlock that
/// comes in prime leads back to stopped where prime was pressed there, since by way of failed and a reset the operating stop
/// would be taken off without a start. Where stop or an interlock comes in the scan of a press or of the end of a rest, the pump
/// is not started for that scan.
/// </summary>
internal static class PhaseTable
{
    private const string Text =
        """
        | event                                                | rest                                                   | dose                                   | retry pause                            | prime                                    | stopped                                                | failed                                                          | output test |
        | rest over, or restart delay over with a dose pending | dose, unless stop is on or an interlock stands         |                                        |                                        |                                          |                                                        | dose, if new tries are set, stop is off and no interlock stands | |
        | dose counted, or run time over                       |                                                        | rest, or failed while a failure stands | rest, or failed while a failure stands |                                          |                                                        |                                                                 | |
        | pulse timeout, retries left                          |                                                        | retry pause                            |                                        |                                          |                                                        |                                                                 | |
        | pulse timeout, none left; any dose-ending alarm      |                                                        | failed                                 | failed                                 |                                          |                                                        |                                                                 | |
        | pause over                                           |                                                        |                                        | dose                                   |                                          |                                                        |                                                                 | |
        | interlock alarm                                      | failed                                                 | failed                                 | failed                                 | failed, or stopped if it came from there |                                                        |                                                                 | stopped |
        | stop on                                              | stopped                                                | stopped                                | stopped                                | stopped                                  |                                                        | stopped                                                         | stopped |
        | start pressed                                        | refused                                                | refused                                | refused                                | refused                                  | failed if a pump-stopping failure stands, else rest    | refused                                                         | refused |
        | dose-now                                             | dose, refused while stop is on or an interlock stands  | refused                                | refused                                | refused                                  | refused                                                | refused                                                         | refused |
        | prime pressed                                        | prime, refused while stop is on or an interlock stands | refused                                | refused                                |                                          | prime, refused while stop is on or an interlock stands | prime, refused while stop is on or an interlock stands          | refused |
        | prime released, or its limit                         |                                                        |                                        |                                        | the phase it came from                   |                                                        |                                                                 | |
        | output test pressed                                  | refused                                                | refused                                | refused                                | refused                                  | output test, if stop is off and no failure stands                | refused                                                         | |
        | output test over                                     |                                                        |                                        |                                        |                                          |                                                        |                                                                 | stopped |
        | reset                                                |                                                        |                                        |                                        |                                          |                                                        | rest, if no pump-stopping failure stands any more               | |
        | power-up after a cut in this phase                   | rest                                                   | rest, or failed while a failure stands | rest, or failed while a failure stands | the phase it came from                   | stopped                                                | failed                                                          | stopped |
        """;

    private static readonly Dictionary<string, Branch<Phase, PhaseGuard>[]> Cells = new()
    {
        ["refused"] = [new(Always, null)],
        ["dose, unless stop is on or an interlock stands"] = [new(StopOffNoInterlock, Phase.Dose)],
        ["dose, refused while stop is on or an interlock stands"] = [new(StopOffNoInterlock, Phase.Dose), new(StopOnOrInterlock, null)],
        ["dose, if new tries are set, stop is off and no interlock stands"] = [new(NewTriesStopOffNoInterlock, Phase.Dose)],
        ["rest, or failed while a failure stands"] = [new(NoPumpStoppingFailure, Phase.Rest), new(PumpStoppingFailure, Phase.Failed)],
        ["failed if a pump-stopping failure stands, else rest"] =
            [new(StopOffFailureStands, Phase.Failed), new(StopOffNoFailure, Phase.Rest), new(StopOn, null)],
        ["prime, refused while stop is on or an interlock stands"] = [new(StopOffNoInterlock, Phase.Prime), new(StopOnOrInterlock, null)],
        ["the phase it came from"] =
            [
                new(CameFromRest, Phase.Rest), new(CameFromStopped, Phase.Stopped), new(CameFromFailedFailureStands, Phase.Failed),
                new(CameFromFailedNoFailure, Phase.Rest),
            ],
        ["failed, or stopped if it came from there"] =
            [new(CameFromStopped, Phase.Stopped), new(CameFromRest, Phase.Failed), new(CameFromFailed, Phase.Failed)],
        ["output test, if stop is off and no failure stands"] =
            [new(StopOffNoFailureAtAll, Phase.OutputTest), new(StopOnOrFailure, null)],
        ["rest, if no pump-stopping failure stands any more"] = [new(NoPumpStoppingFailure, Phase.Rest)],
    };

    /// <summary>The table as the phase machine obeys it.</summary>
    internal static TransitionTable<Phase, PhaseEvent, PhaseGuard> Rules { get; } = new(Text, PhaseWords.Of, PhaseWords.Of, Cells);

    /// <summary>The table with one cell changed.</summary>
    /// <param name="happening">The row.</param>
    /// <param name="state">The column.</param>
    /// <param name="words">What the cell is to say: words that the table knows.</param>
    internal static TransitionTable<Phase, PhaseEvent, PhaseGuard> With(PhaseEvent happening, Phase state, string words)
    {
        string[] rows = Text.Split('\n');
        string[] cells = rows[(int)happening + 1].Trim().Trim('|').Split('|');
        cells[(int)state + 1] = words;
        rows[(int)happening + 1] = $"|{string.Join('|', cells)}|";
        return new(string.Join('\n', rows), PhaseWords.Of, PhaseWords.Of, Cells);
    }
}
