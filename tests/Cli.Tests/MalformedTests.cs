using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Files.Sorts;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed partial class MalformedTests
{
    private static readonly string[] Categories =
        ["syntax", "unknown key", "wrong unit", "wrong range", "missing plant", "cyclic reference", "huge file", "wrong encoding"];

    [Fact]
    public void Each_category_has_four_kinds_or_more_and_all_have_forty_or_more()
    {
        Assert.True(MalformedCorpus.All.Count >= 40);
        Assert.All(Categories, category => Assert.True(MalformedCorpus.All.Count(kind => kind.Category == category) >= 4, category));
        Assert.Equal(Categories.Order(), MalformedCorpus.All.Select(kind => kind.Category).Distinct().Order());
    }

    public static TheoryData<string> Kinds() => new(MalformedCorpus.All.Select(kind => kind.ToString()));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_malformed_script_exits_2_names_the_place_and_writes_nothing(string kind)
    {
        MalformedCase malformed = MalformedCorpus.All.Single(candidate => candidate.ToString() == kind);
        using var session = new Session();
        string path = malformed.Write(session.Folder);
        string[] before = Files(session);
        Assert.Equal(2, session.Run("replay", path, "--trace", session.At("traces"), "--junit", session.At("junit.xml")));
        Assert.Equal("", session.Output);
        Assert.All(session.ErrorLines, line => Assert.Matches(Form(), line));
        Told told = Told.Of(session.ErrorLines[0]);
        Assert.Equal((malformed.File, malformed.Line, malformed.Field), (Path.GetFileName(told.File), told.Line, told.Field));
        Assert.Equal(before, Files(session));
    }

    [Fact]
    public void No_two_kinds_have_one_message()
    {
        var seen = new Dictionary<string, string>();
        foreach (MalformedCase malformed in MalformedCorpus.All)
        {
            using var session = new Session();
            session.Run("replay", malformed.Write(session.Folder));
            Told told = Told.Of(session.ErrorLines[0]);
            string message = $"{told.Message}; {told.Remedy}".Replace(session.Folder.Root, "", StringComparison.Ordinal);
            Assert.True(seen.TryAdd(message, malformed.ToString()), $"'{malformed}' and '{seen.GetValueOrDefault(message)}' both say: {message}");
        }
    }

    [Fact]
    public void One_bad_script_keeps_all_others_from_running()
    {
        using var session = new Session();
        string good = session.Script("good.yaml", "  - {name: it rests, always: phase is rest}\n");
        string bad = session.Folder.Write("bad.yaml", "script: x\n");
        Assert.Equal(2, session.Run("replay", good, bad, "--trace", session.At("traces")));
        Assert.Equal("", session.Output);
        Assert.False(Directory.Exists(session.At("traces")));
    }

    [Theory]
    [InlineData("there is no file or folder", "replay", "nowhere.yaml")]
    [InlineData("matches no script", "replay", "nowhere/**/*.yaml")]
    [InlineData("holds no script", "replay", "empty")]
    [InlineData("is no path", "replay", "")]
    [InlineData("Required argument", "replay")]
    [InlineData("Unrecognized command", "repaly", "good.yaml")]
    [InlineData("There is no option '--job'; did you mean '--jobs'?", "replay", "good.yaml", "--job=3")]
    [InlineData("There is no option '--memry'; did you mean '--memory'?", "explore", "good.yaml", "--memry", "16")]
    [InlineData("There is no option '--hour'; did you mean '--hours'?", "power-cuts", "--hour=2")]
    [InlineData("Unrecognized command or argument '--xml'", "logbook", "good.yaml", "--xml")]
    [InlineData("--scripts is empty", "explore", "good.yaml", "--scripts", "")]
    [InlineData("--jobs is '0': give a whole number from 1 to 256", "replay", "good.yaml", "--jobs", "0")]
    [InlineData("--jobs is 'two'", "replay", "good.yaml", "--jobs", "two")]
    [InlineData("--seed is '-1'", "replay", "good.yaml", "--seed=-1")]
    [InlineData("--scan-bound is '0'", "replay", "good.yaml", "--scan-bound", "0")]
    [InlineData("--filter is empty", "replay", "good.yaml", "--filter", "")]
    [InlineData("is a file; name a folder", "replay", "good.yaml", "--trace", "good.yaml")]
    [InlineData("is a folder; name a file in it", "replay", "good.yaml", "--junit", "empty")]
    [InlineData("the baseline", "replay", "good.yaml", "--baseline", "nowhere.csv")]
    [InlineData("line 1 is not 'time_us,signal,value'", "replay", "good.yaml", "--baseline", "good.yaml")]
    [InlineData("is one record, but 2 scripts are to run", "replay", "good.yaml", "sample.yaml", "--baseline", "nowhere.csv")]
    public void A_bad_command_line_exits_2_and_says_why(string message, params string[] arguments)
    {
        using var session = new Session();
        session.Script("good.yaml", "  - {name: it rests, always: phase is rest}\n");
        Directory.CreateDirectory(session.At("empty"));
        string[] placed = arguments.Select(argument => argument.EndsWith(".yaml", StringComparison.Ordinal) || argument.EndsWith(".csv", StringComparison.Ordinal) || argument == "empty" ? session.At(argument) : argument).ToArray();
        Assert.Equal(2, session.Run(placed));
        Assert.Equal("", session.Output);
        Assert.Contains(message, session.Errors);
    }

    [Theory]
    [InlineData("nowhere.exploration.yaml", "there is no such file")]
    [InlineData("empty", "a folder, not a file")]
    public void What_is_no_file_has_no_line_and_no_field(string name, string message)
    {
        using var session = new Session();
        Directory.CreateDirectory(session.At("empty"));
        Assert.Equal(2, session.Run("explore", session.At(name)));
        Assert.StartsWith($"{session.At(name)}: {message}", Assert.Single(session.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_setting_like_no_other_is_answered_with_where_all_are_listed()
    {
        using var session = new Session();
        session.Folder.Write("plain.settings.yaml", "bananas: 7\n");
        Assert.Equal(2, session.Run("replay", session.Script("a.yaml", "  - {name: it rests, always: phase is rest}\n")));
        Match told = Regex.Match(Assert.Single(session.ErrorLines), " more; all of them: (?<file>[^ ]+)$");
        Assert.True(told.Success, session.Errors);
        Assert.All(FileKeys.Settings.Keys, key => Assert.Contains($"\"{key}\"", File.ReadAllText(Path.Combine(Repository.Root, told.Groups["file"].Value)), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("wrong encoding: UTF-16 without a mark")]
    [InlineData("cyclic reference: three plants in a ring")]
    [InlineData("wrong unit: bananas")]
    public void The_program_itself_says_the_same(string kind)
    {
        MalformedCase malformed = MalformedCorpus.All.Single(candidate => candidate.ToString() == kind);
        using var session = new Session();
        string path = malformed.Write(session.Folder);
        session.Run("replay", path);
        Assert.Equal(new ProgramRun(2, "", session.Errors), ProgramRun.Of([Path.Combine(AppContext.BaseDirectory, "lubebench.dll"), "replay", path]));
    }

    private static string[] Files(Session session) =>
        Directory.EnumerateFileSystemEntries(session.Folder.Root, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToArray();

    [GeneratedRegex(@"^(?<file>.+?):(?<line>\d+):(?<column>\d+): field '(?<field>.+?)' is '(?<value>.*?)': (?<message>.+?); (?<remedy>.+)$")]
    private static partial Regex Form();

    private sealed record Told(string File, int Line, string Field, string Value, string Message, string Remedy)
    {
        public static Told Of(string line)
        {
            Match match = Form().Match(line);
            Assert.True(match.Success, line);
            return new Told(
                match.Groups["file"].Value,
                int.Parse(match.Groups["line"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture),
                match.Groups["field"].Value,
                match.Groups["value"].Value,
                match.Groups["message"].Value,
                match.Groups["remedy"].Value);
        }
    }
}
