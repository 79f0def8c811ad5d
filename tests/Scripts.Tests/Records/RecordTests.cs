using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Xml.Linq;
using CsCheck;
using LubeController.Emulator;
using LubeController.Scripts.Records;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Records;

public sealed class RecordTests
{
    private static Runs Small() => new Runs()
        .OnOff("alarm.divider-stalled", (0, 0), (7, 1))
        .Linear("pressure.line", "Pa", (0, 0), (5, 1.0 / 3.0), (5, 2e7))
        .Phase((0, 0), (5, 1))
        .EndingAt(9);

    [Fact]
    public void Csv_holds_each_point_in_order_of_time_and_of_signals()
    {
        string[] lines = Csv(Small().Trace).Split('\n');
        Assert.Equal(
            [
                "time_us,signal,value", "0,alarm.divider-stalled,0", "0,pressure.line,0", "0,phase,0",
                "5,pressure.line,0.3333333333333333", "5,pressure.line,20000000", "5,phase,1", "7,alarm.divider-stalled,1", "9,end-of-run,0", "",
            ],
            lines);
    }

    [Fact]
    public void Csv_reads_back_as_the_same_numbers() =>
        Gen.Double.Where(double.IsFinite).Array[1, 20].Sample(values =>
        {
            Runs run = new Runs().Linear("q", "Pa", values.Select((value, index) => ((long)index * 3, value)).ToArray()).EndingAt(100);
            TraceRecord[] records = CsvRecord.Read(new StringReader(Csv(run.Trace))).ToArray();
            Assert.Equal(values, records.Where(record => record.Signal == "q").Select(record => record.Value));
            Assert.Null(BaselineComparison.FirstDifference(records, TraceRecords.Of(run.Trace)));
        });

    [Theory]
    [InlineData("time_us,value\n", "line 1 is not 'time_us,signal,value'")]
    [InlineData("time_us,signal,value\n0,a,0\n1,a\n", "line 3 is no record")]
    [InlineData("time_us,signal,value\n0,a,zero\n", "line 2 is no record")]
    [InlineData("time_us,signal,value\n-1,a,0\n", "line 2 is no record")]
    public void A_file_that_is_no_record_is_refused_by_line(string text, string message) =>
        Assert.Contains(message, Assert.Throws<InvalidDataException>(() => CsvRecord.Read(new StringReader(text)).ToArray()).Message);

    [Theory]
    [InlineData("7,alarm.divider-stalled,1", "8,alarm.divider-stalled,1", "record 7 differs in time: baseline '8,alarm.divider-stalled,1', this run '7,alarm.divider-stalled,1'")]
    [InlineData("5,phase,1", "5,phases,1", "record 6 differs in signal: baseline '5,phases,1', this run '5,phase,1'")]
    [InlineData("0.3333333333333333", "0.33333333333333326", "record 4 differs in value: baseline '5,pressure.line,0.33333333333333326', this run '5,pressure.line,0.3333333333333333'")]
    [InlineData("9,end-of-run,0\n", "", "record 8 differs in length: baseline '(no more records)', this run '9,end-of-run,0'")]
    public void The_first_difference_is_named_by_record_and_field_with_both(string old, string other, string expected)
    {
        Trace trace = Small().Trace;
        IEnumerable<TraceRecord> stored = CsvRecord.Read(new StringReader(Csv(trace).Replace(old, other)));
        Assert.Equal(expected, BaselineComparison.FirstDifference(stored, TraceRecords.Of(trace))?.ToString());
    }

    [Fact]
    public void Vcd_keeps_to_the_common_subset()
    {
        var writer = new StringWriter();
        VcdRecord.Write(Small().Trace, writer);
        string[] lines = writer.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        int end = Array.IndexOf(lines, "$enddefinitions $end");
        Assert.Equal("$timescale 1 us $end", Assert.Single(lines, line => line.StartsWith("$timescale", StringComparison.Ordinal)));
        string[] variables = lines[..end].Where(line => line.StartsWith("$var", StringComparison.Ordinal)).ToArray();
        Assert.Equal("$var wire 1 ! alarm_divider_stalled $end", variables[0]);
        Assert.Equal("$var real 64 \" pressure_line $end", variables[1]);
        Assert.Equal(["phase_rest", "phase_dose", "phase_retry_pause", "phase_prime", "phase_stopped", "phase_failed"], variables[2..].Select(line => line.Split(' ')[4]));
        Assert.DoesNotContain(lines[end..], line => line.StartsWith("$comment", StringComparison.Ordinal));
        Assert.Equal(
            ["#0", "$dumpvars", "0!", "r0 \"", "1#", "0$", "0%", "0&", "0'", "0(", "$end", "#5", "r0.3333333333333333 \"", "r20000000 \"", "0#", "1$", "0%", "0&", "0'", "0(", "#7", "1!", "#9"],
            lines[(end + 1)..]);
        Assert.All(writer.ToString(), character => Assert.True(character < 128));
    }

    [Fact]
    public void Vcd_names_and_codes_are_distinct_and_times_never_fall()
    {
        Runs run = new Runs().EndingAt(5);
        for (int index = 0; index < 300; index++)
            run.OnOff(index % 2 == 0 ? $"a.{index}" : $"a-{index - 1}", (0, 0), (index % 5, 1));
        var writer = new StringWriter();
        VcdRecord.Write(run.Trace, writer);
        string[][] variables = writer.ToString().Split('\n').Where(line => line.StartsWith("$var", StringComparison.Ordinal)).Select(line => line.Split(' ')).ToArray();
        Assert.Equal(300, variables.Select(line => line[3]).Distinct().Count());
        Assert.Equal(300, variables.Select(line => line[4]).Distinct().Count());
        long[] times = writer.ToString().Split('\n').Where(line => line.StartsWith('#')).Select(line => long.Parse(line.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal([0, 1, 2, 3, 4, 5], times);
    }

    [Fact]
    public void Junit_says_of_each_suite_what_is_only_assumed_of_its_plant()
    {
        BenchScript script = Reads.Script(Reads.Data("sample.yaml"));
        var verdict = new ScriptVerdict(script, [], ["it expects nothing"]);
        using var writer = new StringWriter();
        JunitReport.Write([verdict], writer);
        XElement suite = XDocument.Parse(writer.ToString()).Root!.Element("testsuite")!;
        Assert.Equal(string.Join('\n', AssumptionText.Of([script.Plant])), suite.Element("system-out")!.Value);
        Assert.StartsWith("assumed: ", suite.Element("system-out")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Junit_counts_what_is_not_exercised_as_an_error()
    {
        using var folder = new TempFolder();
        FakeScriptBench bench = SampleBench.Make();
        string path = folder.Write("s.yaml", """
            script: x
            plant: salt.plant.yaml
            settings: plain.settings.yaml
            duration: 100 s
            steps:
              - {at: 200 s, mark: too late}
            expect:
              - {name: holds, always: phase is rest}
              - {name: "fails & <tells>", eventually: phase is dose}
              - {name: never begins, always: phase is rest, from: phase is prime}
            """);
        ScriptVerdict verdict = new ScriptRunner(bench).Run(Reads.Script(path, bench)).Verdict;
        var writer = new StringWriter();
        JunitReport.Write([verdict, verdict with { Difference = new RecordDifference(3, "value", null, null) }], writer);
        XElement[] suites = XDocument.Parse(writer.ToString()).Root!.Elements("testsuite").ToArray();
        Assert.Equal(["4 1 2", "5 2 2"], suites.Select(suite => $"{suite.Attribute("tests")!.Value} {suite.Attribute("failures")!.Value} {suite.Attribute("errors")!.Value}"));
        Assert.Equal(suites.Select(suite => suite.Attribute("tests")!.Value), suites.Select(suite => $"{suite.Elements("testcase").Count()}"));
        Assert.Equal("fails & <tells>", suites[0].Descendants("failure").Single().Parent!.Attribute("name")!.Value);
        Assert.Equal(2, suites[0].Descendants("error").Count());
    }

    [Fact]
    public void A_file_is_written_whole_or_not_at_all()
    {
        using var folder = new TempFolder();
        string path = folder.Write("kept.txt", "old");
        Assert.Throws<InvalidOperationException>(() => WholeFile.Write(path, writer =>
        {
            writer.Write("half");
            writer.Flush();
            throw new InvalidOperationException("broken off");
        }));
        Assert.Equal("old", File.ReadAllText(path));
        WholeFile.Write(path, writer => writer.WriteLine("new"));
        Assert.Equal("new\n", File.ReadAllText(path));
        Assert.Empty(Directory.EnumerateFiles(folder.Root, "*.part"));
    }

    private static string Csv(Trace trace)
    {
        var writer = new StringWriter();
        CsvRecord.Write(trace, writer);
        return writer.ToString();
    }
}
