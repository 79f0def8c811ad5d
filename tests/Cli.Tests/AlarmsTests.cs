using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Analysis.Alarms;
using LubeController.Core;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed partial class AlarmsTests
{
    [Fact]
    public void Every_alarm_is_told_with_its_cause_and_what_to_do()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("alarms"));
        Assert.Equal(Enum.GetValues<AlarmId>().Select(id => AlarmTable.Spec(id).Name), session.OutputLines.Where(line => line.Length > 0 && line[0] != ' ' && !line.Contains(' ', StringComparison.Ordinal)));
        Assert.Equal(Enum.GetValues<AlarmId>(), AlarmSheet.All.Select(sheet => sheet.Id));
        Assert.All(AlarmSheet.All, sheet => Assert.Contains($"  to do        {sheet.WhatToDo}\n", session.Output, StringComparison.Ordinal));
        Assert.Contains(AlarmSheet.Caution, session.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Causes_are_told_as_on_the_page_of_the_phases()
    {
        string page = Page();
        Assert.All(AlarmSheet.All, sheet => Assert.Contains($"| `{sheet.Name}` | {sheet.RaisedWhen} | ", page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_cause_that_refers_to_what_stands_below_is_told_in_full()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("alarms"));
        Assert.DoesNotContain("see below", session.Output, StringComparison.Ordinal);
        string[] comparisons = [.. Comparison().Matches(Page()).Select(name => name.Groups["name"].Value.ToLowerInvariant())];
        Assert.Equal(3, comparisons.Length);
        Assert.All(comparisons, name => Assert.Contains(name, AlarmSheet.All.Single(sheet => sheet.Id == AlarmId.SensorsDisagree).Cause, StringComparison.Ordinal));
    }

    // What is asked for before the reset must be obeyed in failed while the alarm stands.
    [Fact]
    public void No_press_is_asked_for_that_is_refused_while_the_alarm_stands()
    {
        string[] table = Page().Split('\n');
        int failed = Array.IndexOf(Cells(table.Single(line => line.StartsWith("| event | ", StringComparison.Ordinal))), "failed");
        int judged = 0;
        foreach (AlarmSheet sheet in AlarmSheet.All)
        {
            AlarmAction acts = sheet.Id == AlarmId.CycleSwitchFault ? AlarmAction.DoseEnding : AlarmTable.Spec(sheet.Id).Action;
            if (acts is not (AlarmAction.Interlock or AlarmAction.DoseEnding))
                continue;
            string beforeReset = sheet.WhatToDo[..sheet.WhatToDo.IndexOf("reset", StringComparison.OrdinalIgnoreCase)];
            if (beforeReset.Contains("prime", StringComparison.OrdinalIgnoreCase))
                Obeyed(sheet, acts == AlarmAction.Interlock ? "prime pressed, interlock stands" : "prime pressed");
            if (beforeReset.Contains("dose-now", StringComparison.OrdinalIgnoreCase) || beforeReset.Contains("new dose", StringComparison.OrdinalIgnoreCase))
                Obeyed(sheet, "dose-now pressed");
        }

        Assert.True(judged > 0, "no sheet asks for a press before the reset");

        void Obeyed(AlarmSheet sheet, string press)
        {
            judged++;
            string cell = Cells(table.Single(line => line.StartsWith($"| {press} | ", StringComparison.Ordinal)))[failed];
            Assert.True(cell != "refused", $"{sheet.Name}: {press} is refused in failed");
        }
    }

    // An alarm that latches is reset by somebody, and the sheet says so; one that does not ends by itself or with what it says.
    [Fact]
    public void What_latches_is_said_to_be_reset() =>
        Assert.All(AlarmSheet.All, sheet => Assert.Equal(sheet.Latches, sheet.WhatToDo.Contains("eset", StringComparison.Ordinal)));

    [Fact]
    public void One_alarm_is_told_alone()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("alarms", "reservoir-low"));
        Assert.StartsWith("reservoir-low\n  raised when  the low switch is on\n  acts         none: it only informs\n  category     maintenance required\n  latches      no\n", session.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("divider-stalled", session.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_name_is_refused_with_the_nearest()
    {
        using var session = new Session();
        Assert.Equal(2, session.Run("alarms", "divider-stuck"));
        Assert.Contains("there is no alarm 'divider-stuck'", session.Errors, StringComparison.Ordinal);
        Assert.Equal("", session.Output);
    }

    private static string Page() => File.ReadAllText(Path.Combine(Repository.Root, "firmware", "PHASES.md")).ReplaceLineEndings("\n");

    private static string[] Cells(string row) => [.. row.Split('|').Select(cell => cell.Trim())];

    /// <summary>A comparison of sensors, named in italics.</summary>
    [GeneratedRegex(@"(?<![\w*])\*(?<name>[A-Z][a-z ]+ and [a-z ]+)\*(?=:)", RegexOptions.ExplicitCapture)]
    private static partial Regex Comparison();
}
