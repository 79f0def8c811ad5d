using System;
using System.IO;
using LubeController.Core;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>How long the blocks last.</summary>
public sealed class WearEstimateTests
{
    private static readonly MemoryLayout Usual = new(MemoryLayout.UsualBlocks, MemoryLayout.UsualBlockLength);

    [Fact]
    public void The_usual_layout_lasts_ten_years_at_the_preset_save_interval()
    {
        var wear = new WearEstimate(Usual, MemoryLayout.UsualBlockLength);
        Assert.Equal(SettingTable.Spec(SettingField.SaveIntervalMs).Preset, wear.SaveIntervalMs);
        Assert.All(Enum.GetValues<BlockKind>(), kind => Assert.True(wear.YearsOf(kind) >= 10, $"{kind}: {wear.YearsOf(kind)} years"));
        Assert.True(wear.StateBlocksFor(10) <= Usual.StateBlocks);
    }

    // By hand: 1440 saves by time, 300 by event and 10 at starts in a day, 365 days, over 64 blocks: 9980.5.
    [Fact]
    public void The_numbers_are_those_worked_out_by_hand()
    {
        var wear = new WearEstimate(Usual, MemoryLayout.UsualBlockLength);
        Assert.Equal((9981, 10), (wear.WritesPerBlockPerYear(BlockKind.State), wear.YearsOf(BlockKind.State)));
        Assert.Equal((144, 1825, 365), (wear.WritesPerBlockPerYear(BlockKind.Logbook), wear.WritesPerBlockPerYear(BlockKind.Boot), wear.WritesPerBlockPerYear(BlockKind.Settings)));
        wear.SaveIntervalMs = 1000;
        Assert.True(wear.YearsOf(BlockKind.State) < 1);
        wear.Endurance = 10_000_000;
        Assert.Equal(20, wear.YearsOf(BlockKind.State));
    }

    [Fact]
    public void The_page_on_memory_shows_these_numbers()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "firmware", "MEMORY.md"));
        var wear = new WearEstimate(Usual, MemoryLayout.UsualBlockLength);
        foreach (BlockKind kind in Enum.GetValues<BlockKind>())
        {
            int blocks = kind switch { BlockKind.State => Usual.StateBlocks, BlockKind.Logbook => Usual.LogBlocks, _ => 2 };
            Assert.Contains($"| {kind.ToString().ToLowerInvariant()} | {blocks} | {wear.WritesPerBlockPerYear(kind)} | {wear.YearsOf(kind)} |", page, StringComparison.Ordinal);
        }

        foreach (int seconds in new[] { 10, 60, 600 })
        {
            wear.SaveIntervalMs = seconds * 1000;
            Assert.Contains($"| {seconds} s | {wear.WritesPerBlockPerYear(BlockKind.State)} | {wear.YearsOf(BlockKind.State)} | {wear.StateBlocksFor(10)} |", page, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(7, 4096)]
    [InlineData(8, 2047)]
    public void A_storage_that_is_too_small_is_refused(int blocks, int length) =>
        Assert.Contains("8 blocks of 2048 bytes", Assert.Throws<ArgumentException>(() => new MemoryLayout(blocks, length)).Message, StringComparison.Ordinal);
}
