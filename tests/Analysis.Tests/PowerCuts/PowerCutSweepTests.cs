using System;
using System.Linq;
using System.Text.RegularExpressions;
using System.Threading;
using LubeController.Analysis.PowerCuts;
using LubeController.Board;
using Xunit;

namespace LubeController.Analysis.Tests.PowerCuts;

/// <summary>Every byte of each distinct kind of write and of one wrap of the logbook is cut; and the sweep finds storage that was made wrong on purpose.</summary>
[Trait("Run", "Long")]
public sealed partial class PowerCutSweepTests
{
    private const int Refusals = 150;

    [Fact]
    public void A_cut_at_any_byte_of_each_kind_of_write_loses_nothing_that_was_promised()
    {
        PowerCutResult result = PowerCutSweep.Run(Setup(1), CancellationToken.None);
        Assert.Empty(result.Violations);
        Assert.All(Enum.GetValues<WriteKind>(), kind => Assert.Equal(1, result.WritesCut[kind]));
        Assert.True(result.Cuts[WriteKind.StateEvent] > 3 * 700, $"{result.Cuts[WriteKind.StateEvent]} cuts of a state");
        Assert.Equal(3 * (LogEntry.Length + 1), result.Cuts[WriteKind.LogEntry]);
        Assert.True(result.Doses > 3 && result.Starts > 4, $"{result.Doses} doses, {result.Starts} starts");
    }

    [Fact]
    public void The_result_hangs_on_no_job()
    {
        PowerCutSetup setup = Setup(2, refusals: 0) with { DurationMs = 11 * 60_000 };
        PowerCutResult one = PowerCutSweep.Run(setup, CancellationToken.None);
        PowerCutResult three = PowerCutSweep.Run(setup with { Jobs = 3 }, CancellationToken.None);
        Assert.Equal(one.Writes, three.Writes);
        Assert.Equal(one.Cuts, three.Cuts);
        Assert.Equal(one.WritesCut, three.WritesCut);
    }

    [Theory]
    [InlineData("one block for the state", "committed alarm|count of doses|neither the old nor the new")]
    [InlineData("one bank for the settings", "the settings are Lost|neither the old nor the new|NeverStored")]
    [InlineData("settings one store late", "the settings are|neither the old nor the new")]
    [InlineData("boot record not written", "the pump runs although no boot record")]
    [InlineData("boot record one start late", "the boot record counts|fault of the main loop")]
    [InlineData("logbook block rewritten for each entry", "of the logbook is lost|says something else than was written")]
    [InlineData("logbook erases the block after too", "of the logbook is lost|says something else than was written")]
    [InlineData("state one save late", "committed alarm|count of doses|neither the old nor the new|rest")]
    [InlineData("end written first", "raises storage-corrupt")]
    public void Storage_that_was_made_wrong_on_purpose_is_found(string fault, string text)
    {
        PowerCutResult result = PowerCutSweep.Run(Setup(4) with { Layer = inner => FaultyStorage.Make(fault, inner) }, CancellationToken.None);
        Assert.NotEmpty(result.Violations);
        Assert.Contains(result.Violations, violation => text.Split('|').Any(part => violation.Text.Contains(part, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_violation_is_told_with_its_place()
    {
        PowerCutResult result = PowerCutSweep.Run(Setup(1) with { Layer = inner => FaultyStorage.Make("one block for the state", inner) }, CancellationToken.None);
        string[] lines = [.. PowerCutText.Lines(result, 1)];
        Assert.Contains(lines, line => Place().IsMatch(line));
        Assert.Equal("something promised does not hold", lines[^1]);
    }

    [GeneratedRegex(@"^write \d+ \(state [a-z ]+\), cut after \d+ bytes, rest (old|erased|garbage): ")]
    private static partial Regex Place();

    private static PowerCutSetup Setup(int mostOfKind, int refusals = Refusals) => new()
    {
        Settings = PowerCutSetup.UsualSettings(),
        Steps = PowerCutSchedule.Hours(1, refusals),
        DurationMs = PowerCutSchedule.LengthMs(1),
        MostOfKind = mostOfKind,
    };
}
