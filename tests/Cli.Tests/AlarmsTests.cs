using System;
using System.IO;
using System.Linq;
using LubeController.Core;
using LubeController.Scripts.Alarms;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed class AlarmsTests
{
    [Fact]
    public void Every_alarm_is_told_with_its_cause_and_what_to_do()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("alarms"));
        Assert.Equal(Enum.GetValues<AlarmId>().Select(AlarmTable.NameOf), session.OutputLines.Where(line => line.Length > 0 && line[0] != ' ' && !line.Contains(' ', StringComparison.Ordinal)));
        Assert.Equal(Enum.GetValues<AlarmId>(), AlarmSheet.All.Select(sheet => sheet.Id));
        Assert.All(AlarmSheet.All, sheet => Assert.Contains($"  to do        {sheet.WhatToDo}\n", session.Output, StringComparison.Ordinal));
        Assert.Contains(AlarmSheet.Caution, session.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Causes_are_told_as_on_the_page_of_the_phases()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "firmware", "PHASES.md"));
        Assert.All(AlarmSheet.All, sheet => Assert.Contains($"| `{sheet.Name}` | {sheet.RaisedWhen} | ", page, StringComparison.Ordinal));
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
}
