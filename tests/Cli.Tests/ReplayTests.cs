using System;
using System.IO;
using System.Linq;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed class ReplayTests
{
    private const string Holds = "  - {name: it rests, always: phase is rest}\n";
    private const string Fails = "  - {name: it doses, eventually: phase is dose, within: 30 s}\n";
    private const string NotExercised = "  - {name: it primes, always: phase is rest, from: phase is prime}\n";

    [Theory]
    [InlineData("--trace", "")]
    [InlineData("--junit", "/x.xml")]
    public void What_cannot_be_written_is_told_by_option_path_and_remedy(string option, string below)
    {
        using var session = new Session();
        // No folder can be made below a file.
        string path = session.At("plain.settings.yaml") + "/none" + below;
        Assert.Equal(2, session.Run("replay", session.Script("a.yaml", Holds), option, path));
        Assert.Contains($"{option}: '{path}", session.Errors, StringComparison.Ordinal);
        Assert.Contains("cannot be written: ", session.Errors, StringComparison.Ordinal);
        Assert.EndsWith("; name a place where you may write", session.Errors.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void All_held_is_0_and_one_line_a_script_with_what_is_assumed_and_totals()
    {
        using var session = new Session();
        string first = session.Script("a.yaml", Holds);
        string second = session.Script("b.yaml", Holds);
        Assert.Equal(0, session.Run("replay", first, second));
        Assert.Equal(
            [
                $"held           {first}  a title (1 of 1 held)",
                $"held           {second}  a title (1 of 1 held)",
                "assumed: Salt works, brine pump (an invented plant for tests) (Test grease): yield stress at 25 degC 200 Pa (invented for tests); temperature coefficient of the yield stress 0.02 1/K (no figure for this grease: halved every 35 K); temperature coefficient of the consistency 0.04 1/K (invented for tests)",
                "scripts: 2, 2 held, 0 failed, 0 not exercised",
                "expectations: 2, 2 held, 0 failed, 0 not exercised",
                "scans executed: 2",
                "A simulated pass does not replace the test on the machine.",
            ],
            session.OutputLines);
        Assert.Equal("", session.Errors);
    }

    [Theory]
    [InlineData(Fails, 1)]
    [InlineData(NotExercised, 1)]
    [InlineData(Holds + Fails, 1)]
    [InlineData("", 1)]
    [InlineData(Holds, 0)]
    public void The_exit_code_tells_whether_all_was_exercised_and_held(string expectations, int expected)
    {
        using var session = new Session();
        Assert.Equal(expected, session.Run("replay", session.Script("a.yaml", expectations)));
    }

    [Fact]
    public void A_failure_tells_the_expectation_the_window_what_was_seen_the_events_and_the_command()
    {
        FakeScriptBench bench = SampleBench.Make().At(40_000_000, "phase", 1);
        bench.OnAction = (time, _, trace) => trace.Note(time, "output", "pump on");
        using var session = new Session { Bench = bench };
        string steps = "steps:\n" + string.Concat(Enumerable.Range(1, 60).Select(number => $"  - {{at: {number} s, mark: mark {number}}}\n"));
        string path = session.Script("a b.yaml", Fails, steps);
        Assert.Equal(1, session.Run("replay", path, "--seed", "5"));
        string[] lines = session.OutputLines;
        Assert.Equal($"FAILED         {path}  a title (0 of 1 held)", lines[0]);
        Assert.Equal(
            [
                "  FAILED 'it doses': eventually phase is dose within 30 s",
                $"    at      {path}:67:5",
                "    window  0 s to 30 s",
                "    reason  it came true only at 40 s",
                "    seen    phase was rest at 30 s",
                "    margin  -10 s",
                "    events around 30 s",
            ],
            lines[1..8]);
        string[] events = lines[8..28];
        Assert.Equal("      26 s                   step    mark 26", events[0]);
        Assert.Equal("      35 s                   output  pump on", events[^1]);
        Assert.Equal($"  repeat: lubebench replay '{path}' --seed 5", lines[28]);
    }

    [Fact]
    public void The_command_that_is_printed_repeats_the_failure()
    {
        using var session = new Session();
        session.Run("replay", session.Script("a.yaml", Fails), "--scan-bound", "77");
        string command = session.OutputLines.Single(line => line.StartsWith("  repeat: ", StringComparison.Ordinal))["  repeat: lubebench ".Length..];
        string before = session.Output;
        Assert.EndsWith("--seed 1 --scan-bound 77", command);
        Assert.Equal(1, session.Run(command.Split(' ')));
        Assert.Equal(before, session.Output);
    }

    [Fact]
    public void Results_do_not_depend_on_the_number_of_jobs()
    {
        using var session = new Session();
        for (int number = 0; number < 30; number++)
            session.Script($"s{number:00}.yaml", number % 3 == 0 ? Fails : Holds, title: $"number {number}");
        File.Delete(session.At("sample.yaml"));
        Assert.Equal(1, session.Run("replay", session.Folder.Root, "--jobs", "1"));
        string one = session.Output;
        Assert.Equal(1, session.Run("replay", session.Folder.Root, "--jobs", "8"));
        Assert.Equal(one, session.Output);
        Assert.Equal(30, session.OutputLines.Count(line => line.Contains("number")));
    }

    [Fact]
    public void Folders_and_patterns_pass_over_plants_settings_and_bases_only()
    {
        using var session = new Session();
        File.Delete(session.At("sample.yaml"));
        Directory.CreateDirectory(session.At("sub/deep"));
        session.Script("one.yaml", Holds);
        session.Folder.Write("base.base.yaml", "script: not one by itself\n");
        foreach (string name in (string[])["sub/two.yaml", "sub/deep/three.yaml"])
            session.Folder.Write(name, $"based-on: {(name.Count(c => c == '/') == 1 ? "../" : "../../")}one.yaml\n");
        Assert.Equal(3, Count(session.Folder.Root));
        Assert.Equal(3, Count(session.At("**/*.yaml")));
        Assert.Equal(1, Count(session.At("*.yaml")));
        Assert.Equal(2, Count(session.At("sub/**/t*.yaml")));
        Assert.Equal(1, Count(session.At("s?b/*.yaml")));
        Assert.Equal(1, Count(session.At("one.yaml"), session.At("*.yaml"), session.Folder.At("./one.yaml")));

        int Count(params string[] paths)
        {
            Assert.Equal(0, session.Run(["replay", .. paths]));
            return session.OutputLines.Count(line => line.StartsWith("held", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_filter_chooses_by_path_or_title()
    {
        using var session = new Session();
        session.Script("a.yaml", Holds, title: "a blocked outlet");
        session.Script("blocked.yaml", Holds);
        session.Script("b.yaml", Fails);
        Assert.Equal(0, session.Run("replay", session.At("?.yaml"), session.At("blocked.yaml"), "--filter", "Blocked"));
        Assert.Equal(2, session.OutputLines.Count(line => line.StartsWith("held", StringComparison.Ordinal)));
        Assert.Equal(2, session.Run("replay", session.At("b.yaml"), "--filter", "nothing"));
        Assert.Contains("none of the 1 scripts has 'nothing' in path or title", session.Errors);
    }

    [Fact]
    public void Traces_are_kept_and_compared_with_later_runs()
    {
        FakeScriptBench bench = SampleBench.Make();
        using var session = new Session { Bench = bench };
        string path = session.Script("a.yaml", Holds);
        Assert.Equal(0, session.Run("replay", path, "--trace", session.At("records")));
        string csv = Directory.EnumerateFiles(session.At("records"), "a.csv", SearchOption.AllDirectories).Single();
        Assert.True(File.Exists(Path.ChangeExtension(csv, ".vcd")));
        Assert.Equal(0, session.Run("replay", path, "--baseline", session.At("records")));
        Assert.Equal(0, session.Run("replay", path, "--baseline", csv));
        bench.At(7_000_000, "pressure.line", 12345);
        Assert.Equal(1, session.Run("replay", path, "--baseline", csv));
        Assert.Contains("  differs from the baseline: record 8 differs in time: baseline '100000000,end-of-run,0', this run '7000000,pressure.line,12345'", session.OutputLines);
    }

    [Fact]
    public void Margins_of_what_held_are_listed_for_one_script_and_on_demand()
    {
        using var session = new Session { Bench = SampleBench.Make().At(40_000_000, "phase", 1) };
        string path = session.Script("a.yaml", "  - {name: it doses, eventually: phase is dose, within: 50 s}\n  - {name: no pressure, always: pressure line < 3 bar}\n");
        string[] margins = ["  held 'it doses', margin +10 s", "  held 'no pressure', margin +3 bar"];
        Assert.Equal(0, session.Run("replay", path));
        Assert.Equal(margins, session.OutputLines[1..3]);

        string other = session.Script("b.yaml", "  - {name: it never stalls, never: alarm divider-stalled is on}\n");
        Assert.Equal(0, session.Run("replay", path, other));
        Assert.DoesNotContain(margins[0], session.OutputLines);
        Assert.Equal(0, session.Run("replay", path, other, "--margins"));
        Assert.Equal(margins, session.OutputLines[1..3]);
        Assert.Equal("  held 'it never stalls', held to the end of the run", session.OutputLines[4]);
    }

    [Fact]
    public void Verdicts_are_written_as_junit()
    {
        using var session = new Session();
        Assert.Equal(1, session.Run("replay", session.Script("a.yaml", Holds + Fails), "--junit", session.At("out/verdicts.xml")));
        Assert.Contains("tests=\"2\" failures=\"1\" errors=\"0\"", File.ReadAllText(session.At("out/verdicts.xml")));
    }

    [Fact]
    public void Seeds_and_bounds_given_take_the_place_of_the_scripts_own()
    {
        var bench = new Recording(SampleBench.Make());
        using var session = new Session { Bench = bench };
        session.Run("replay", session.Script("a.yaml", Holds, "seed: 3\nscan-bound: 9\n"));
        Assert.Equal((3UL, 9L), bench.Last);
        session.Run("replay", session.At("a.yaml"), "--seed", "11", "--scan-bound", "12");
        Assert.Equal((11UL, 12L), bench.Last);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("replay", "--help")]
    public void Help_lists_what_is_known_and_warns(params string[] arguments)
    {
        using var session = new Session();
        Assert.Equal(0, session.Run(arguments));
        string[] wanted = arguments.Length == 1
            ? ["replay", "Examples:", "lubebench replay hil-scripts", "A simulated pass does not replace the test on the machine."]
            : ["--jobs", "--seed", "--filter", "--trace", "--baseline", "--junit", "--scan-bound", "Exit code: 0 all held"];
        Assert.All(wanted, text => Assert.Contains(text, session.Output));
    }

    [Fact]
    public void The_bar_fills_as_scripts_run()
    {
        Assert.Equal("[..............................] 0 of 4 scripts", ReplayCommand.Bar(0, 4));
        Assert.Equal("[###############...............] 2 of 4 scripts", ReplayCommand.Bar(2, 4));
        Assert.Equal("[##############################] 4 of 4 scripts", ReplayCommand.Bar(4, 4));
    }

    private sealed class Recording(FakeScriptBench bench) : IScriptBench
    {
        public (ulong Seed, long Bound) Last { get; private set; }

        public LubeController.Scripts.Steps.BenchVocabulary Describe(LubeController.Plant.Description.PlantDescription plant, LubeController.Files.SettingsFiles.ControlSettings settings) => bench.Describe(plant, settings);

        public RunResult Run(LubeController.Scripts.ScriptFiles.BenchScript script)
        {
            Last = (script.Seed, script.ScanBound);
            return bench.Run(script);
        }
    }
}
