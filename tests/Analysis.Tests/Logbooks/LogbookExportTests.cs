using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using LubeController.Analysis.Logbooks;
using LubeController.Board;
using LubeController.Core;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Logbooks;

/// <summary>What a person reads of a board's logbook, compared with what the scenario says by hand.</summary>
public sealed class LogbookExportTests : IDisposable
{
    private const uint SixOClock = 1_767_247_200;

    // Levels are believed after 1 s, presses after 20 ms; what is asked at the bench is told by the scan after the next.
    private const string Scenario = """
        script: a low and an empty reservoir while stopped
        plant: salt.plant.yaml
        settings: log.settings.yaml
        duration: 2 min
        steps:
          - { at: 0 s, set: stop, to: on }
          - { at: 0 s, set: level-low, to: off }
          - { at: 0 s, set: level-empty, to: off }
          - { at: 10 s, set: level-low, to: on }
          - { at: 20 s, set: level-empty, to: on }
          - { at: 30 s, press: acknowledge }
          - { at: 40 s, set: level-empty, to: off }
          - { at: 50 s, press: reset }
          - { at: 60 s, press: acknowledge }
          - { at: 70 s, set: level-low, to: off }
          - { at: 80 s, press: dose-now }
          - { at: 90 s, shelve: reservoir-low, for: 30 s }
          - { at: 100 s, power: off }
          - { at: 110 s, power: on }
        expect:
          - { name: it stays stopped, eventually: phase is stopped }
        """;

    private const string Settings = """
        level-low-switch: yes
        level-empty-switch: yes
        level-debounce: 1 s
        button-debounce: 20 ms
        restarts-most: 0
        reservoir-low-delay-on: 0 s
        reservoir-low-delay-off: 0 s
        reservoir-empty-delay-on: 0 s
        reservoir-empty-delay-off: 0 s
        """;

    private static readonly string[][] Golden =
    [
        ["number", "kind", "what", "detail", "by", "began-s", "began-at", "lasted-s", "condition-ended-s", "acknowledged-s", "acknowledged-by", "reset-s", "first-up", "suppressed-by", "hidden"],
        ["1", "start", "power-on", "start 1", "controller", "0", "2026-01-01T06:00:00Z", "", "", "", "", "", "", "", ""],
        ["2", "phase", "stopped", "", "controller", "0", "2026-01-01T06:00:00Z", "", "", "", "", "", "", "", ""],
        ["3", "alarm", "reservoir-low", "", "controller", "11", "2026-01-01T06:00:11Z", "60", "71", "60.02", "button", "", "yes", "reservoir-empty", ""],
        ["4", "alarm", "reservoir-empty", "", "controller", "21", "2026-01-01T06:00:21Z", "29.02", "41", "30.02", "button", "50.02", "", "", ""],
        ["6", "press", "acknowledge", "obeyed", "button", "30.02", "2026-01-01T06:00:30Z", "", "", "", "", "", "", "", ""],
        ["8", "press", "reset", "obeyed", "button", "50.02", "2026-01-01T06:00:50Z", "", "", "", "", "", "", "", ""],
        ["11", "press", "acknowledge", "obeyed", "button", "60.02", "2026-01-01T06:01:00Z", "", "", "", "", "", "", "", ""],
        ["13", "press", "dose-now", "refused", "button", "80.02", "2026-01-01T06:01:20Z", "", "", "", "", "", "", "", ""],
        ["14", "shelving", "reservoir-low", "for 30 s", "bench", "90.01", "2026-01-01T06:01:30Z", "", "", "", "", "", "", "", ""],
        ["15", "start", "power-on", "start 2", "controller", "90.01", "2026-01-01T06:01:50Z", "", "", "", "", "", "", "", ""],
    ];

    private readonly TempFolder _folder = new();

    [Fact]
    public void Csv_says_what_the_scenario_says_quoted_and_ended_as_in_RFC_4180()
    {
        Run(SixOClock, out _, out string csv, out _);
        Assert.Equal(Golden, Parse(csv));
    }

    [Fact]
    public void Json_says_the_same_with_null_for_what_is_not_known()
    {
        Run(SixOClock, out _, out _, out string json);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement[] all = [.. document.RootElement.EnumerateArray()];
        Assert.Equal(Golden.Skip(1).Select(row => row[0]), all.Select(one => one.GetProperty("number").GetRawText()));
        JsonElement low = all[2];
        Assert.Equal(
            ("alarm", "reservoir-low", 11m, 60m, 71m, 60.02m, "button", true),
            (low.GetProperty("kind").GetString(), low.GetProperty("what").GetString(), low.GetProperty("beganS").GetDecimal(), low.GetProperty("lastedS").GetDecimal(), low.GetProperty("conditionEndedS").GetDecimal(), low.GetProperty("acknowledgedS").GetDecimal(), low.GetProperty("acknowledgedBy").GetString(), low.GetProperty("firstUp").GetBoolean()));
        Assert.Equal(["reservoir-empty"], low.GetProperty("suppressedBy").EnumerateArray().Select(cause => cause.GetString()));
        Assert.Equal("2026-01-01T06:00:11Z", low.GetProperty("beganAt").GetString());
        Assert.Equal(JsonValueKind.Null, low.GetProperty("resetS").ValueKind);
        Assert.Equal(50.02m, all[3].GetProperty("resetS").GetDecimal());
        Assert.Equal(("bench", JsonValueKind.Null), (all[8].GetProperty("by").GetString(), all[8].GetProperty("lastedS").ValueKind));
    }

    [Fact]
    public void A_board_without_a_clock_knows_no_time_of_day()
    {
        Run(0, out string text, out string csv, out _);
        Assert.Equal([""], Parse(csv).Skip(1).Select(row => row[6]).Distinct());
        Assert.Contains("        11 s  alarm           reservoir-low: lasted 60 s, acknowledged at 60.02 s by button, first up, suppressed, as it follows from reservoir-empty\n", text, StringComparison.Ordinal);
        Assert.Contains("     80.02 s  press           dose-now: refused\n", text, StringComparison.Ordinal);

        // The longest kinds are set apart from what follows, too.
        Assert.Equal([' '], text.Split('\n').Where(line => line.Contains("s  ", StringComparison.Ordinal)).Select(line => line[29]).Distinct());
    }

    // Without its reset, at 50 s, the empty reservoir of the scenario stays latched; without its refill, at 40 s, it lasts.
    [Theory]
    [InlineData("condition ended at 41 s, latched still", "{ at: 50 s, press: reset }")]
    [InlineData("lasts still", "{ at: 40 s, set: level-empty, to: off }")]
    public void An_alarm_that_only_its_latch_holds_is_not_said_to_last(string expected, string left)
    {
        Run(0, out string text, out _, out _, Scenario.Replace($"  - {left}\n", "", StringComparison.Ordinal));
        Assert.Contains($"        21 s  alarm           reservoir-empty: {expected}, acknowledged at 30.02 s by button\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Cells_with_commas_quotes_and_line_ends_are_quoted()
    {
        var output = new StringWriter();
        var occurrence = new LogOccurrence { Number = 1, Kind = "board", What = "a, \"b\"", Detail = "c\r\nd", By = "controller", Began = new LogTime(1500, null) };
        LogbookCsv.Write([occurrence], output);
        Assert.EndsWith("\r\n1,board,\"a, \"\"b\"\"\",\"c\r\nd\",controller,1.5,,,,,,,,,\r\n", output.ToString(), StringComparison.Ordinal);
        Assert.Equal(["1", "board", "a, \"b\"", "c\r\nd"], Parse(output.ToString())[1].Take(4));
    }

    [Fact]
    public void An_alarm_that_rises_again_while_latched_is_one_and_one_that_lasts_has_no_end()
    {
        LogOccurrence alarm = Assert.Single(LogOccurrences.Of(
        [
            Entry(1, ScanEvent.AlarmRaised, AlarmId.PumpOverload, 10), Entry(2, ScanEvent.AlarmEnded, AlarmId.PumpOverload, 20),
            Entry(3, ScanEvent.AlarmRaised, AlarmId.PumpOverload, 30),
        ]));
        Assert.Equal((1u, null, null, null), (alarm.Number, alarm.LastedMs, alarm.ConditionEnded, alarm.Acknowledged));
    }

    [Fact]
    public void What_is_shelved_is_not_acknowledged_until_it_is_shown_again()
    {
        LogEntry acknowledge = Entry(3, ScanEvent.PressObeyed, (AlarmId)(int)Button.Acknowledge, 30);
        acknowledge.Source = LogSource.Button;
        IReadOnlyList<LogOccurrence> all = LogOccurrences.Of(
        [
            Entry(1, ScanEvent.AlarmShelved, AlarmId.ReservoirLow, 10), Entry(2, ScanEvent.AlarmRaised, AlarmId.ReservoirLow, 20), acknowledge,
            Entry(4, ScanEvent.ShelvingEnded, AlarmId.ReservoirLow, 40),
        ]);
        LogOccurrence alarm = all.Single(one => one.Kind == "alarm");
        Assert.Null(alarm.Acknowledged);
        Assert.StartsWith("shelved", alarm.Hidden, StringComparison.Ordinal);
        Assert.Equal(30_000, all.Single(one => one.Kind == "shelving").LastedMs);
    }

    public void Dispose() => _folder.Dispose();

    private static LogEntry Entry(uint number, ScanEvent what, AlarmId subject, int uptimeS) => new() { Sequence = number, What = (int)what, Subject = (int)subject, UptimeS = uptimeS };

    /// <summary>RFC 4180, section 2: records end with CR LF, fields are divided by commas, a quoted field may hold both, and a doubled quote.</summary>
    private static List<string[]> Parse(string csv)
    {
        var records = new List<string[]>();
        var fields = new List<string>();
        var field = new StringBuilder();
        bool quoted = false;
        for (int at = 0; at < csv.Length; at++)
        {
            char letter = csv[at];
            if (quoted && letter == '"' && at + 1 < csv.Length && csv[at + 1] == '"')
            {
                field.Append('"');
                at++;
            }
            else if (letter == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted && letter == ',')
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else if (!quoted && letter == '\r')
            {
                Assert.Equal('\n', csv[++at]);
                fields.Add(field.ToString());
                field.Clear();
                records.Add([.. fields]);
                fields.Clear();
            }
            else
            {
                Assert.True(quoted || letter != '\n', "a line feed outside quotes without a carriage return");
                field.Append(letter);
            }
        }

        Assert.Equal((0, 0), (field.Length, fields.Count));
        return records;
    }

    private void Run(uint wallTimeS, out string text, out string csv, out string json, string scenario = Scenario)
    {
        _folder.Write("log.settings.yaml", Settings);
        string script = _folder.Write("log.yaml", scenario);
        var bench = new EmulatedBench { WallTimeAtStartS = wallTimeS };
        IReadOnlyList<LogOccurrence> occurrences = LogOccurrences.Of(bench.Run(Repository.Read(script)).Logbook);
        text = string.Concat(occurrences.Select(occurrence => LogbookText.Line(occurrence) + "\n"));
        using var csvOutput = new StringWriter();
        using var jsonOutput = new StringWriter();
        LogbookCsv.Write(occurrences, csvOutput);
        LogbookJson.Write(occurrences, jsonOutput);
        csv = csvOutput.ToString();
        json = jsonOutput.ToString();
    }
}
