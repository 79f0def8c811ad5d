using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Compares the alarms in PHASES.md with what the core knows of them.</summary>
public sealed class AlarmTableTests
{
    private static readonly MarkdownTable Table = MarkdownTable.Read("alarm");

    /// <summary>Whether the page says that reset itself ends the condition; AlarmTests hold the core to it.</summary>
    public static bool EndedByReset(AlarmId id) => Table.Rows[(int)id][6] == "yes";

    public static TheoryData<AlarmId> Ids() => new(Enum.GetValues<AlarmId>());

    [Fact]
    public void The_page_lists_the_alarms_in_the_order_of_the_core() =>
        Assert.Equal(Enum.GetValues<AlarmId>().Select(id => AlarmTable.Spec(id).Name), Table.Rows.Select(row => row[0]));

    [Fact]
    public void The_count_is_the_number_of_identifiers() =>
        Assert.Equal(AlarmTable.Count, Enum.GetValues<AlarmId>().Length);

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_alarm_acts_and_latches_as_the_page_says(AlarmId id)
    {
        var row = Table.Rows[(int)id];
        Assert.Equal(row[2], AlarmTable.Spec(id).Action switch
        {
            AlarmAction.Interlock => "interlock",
            AlarmAction.DoseEnding => "dose-ending",
            AlarmAction.Holding => "holding",
            _ => "none",
        });
        Assert.Equal(row[3], AlarmTable.Spec(id).Category switch
        {
            AlarmCategory.Failure => "failure",
            AlarmCategory.OutOfSpecification => "out of specification",
            _ => "maintenance required",
        });
        Assert.Equal(row[4], Word(AlarmTable.Spec(id).Latches));
        Assert.Equal(row[5], Word(AlarmTable.Spec(id).TakesDelayOn));
        Assert.NotEmpty(row[1]);
    }

    [Fact]
    public void Every_alarm_has_a_row_and_a_name_of_its_own() =>
        Assert.Equal(AlarmTable.Count, Enum.GetValues<AlarmId>().Select(id => AlarmTable.Spec(id).Name).Where(name => name.Length > 0).Distinct().Count());

    private static string Word(bool yes) => yes ? "yes" : "no";
}
