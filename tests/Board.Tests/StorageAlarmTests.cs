using System;
using System.Collections.Generic;
using LubeController.Core;
using NSubstitute;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>What the memory loses or takes no more is told by storage-corrupt: once for each place, and beside all else that a scan saw.</summary>
public sealed class StorageAlarmTests
{
    private readonly BoardBench _bench = new();

    [Theory]
    [InlineData(2, 30)]
    [InlineData(4, 8)]
    [InlineData(4, 40)]
    [InlineData(BoardBench.FirstState, 30)]
    [InlineData(BoardBench.FirstState, 12)]
    [InlineData(BoardBench.FirstState, 700)]
    public void A_bit_that_flips_in_a_finished_block_raises_storage_corrupt_once(int block, int at)
    {
        _bench.Start();
        _bench.Blocks[block]![at] ^= 1;
        MainLoop loop = Started();
        Assert.True(loop.Core.Alarms.IsLatched(AlarmId.StorageCorrupt), $"block {block}");
        Reset(loop);
        Assert.False(loop.Core.Alarms.Stands(AlarmId.StorageCorrupt));
        Assert.False(Started().Core.Alarms.Stands(AlarmId.StorageCorrupt));
    }

    [Fact]
    public void Another_place_is_told_although_the_one_told_before_has_been_written_anew()
    {
        _bench.Start();
        _bench.Blocks[BoardBench.FirstState]![30] ^= 1;
        Reset(Started());
        Assert.False(Started().Core.Alarms.Stands(AlarmId.StorageCorrupt));
        _bench.Blocks[4]![40] ^= 1;
        Assert.True(Started().Core.Alarms.Stands(AlarmId.StorageCorrupt));
    }

    [Theory]
    [InlineData("boot")]
    [InlineData("save")]
    [InlineData("log")]
    public void A_block_of_any_kind_that_is_not_taken_is_told(string kind)
    {
        _bench.StorageWorks = () => _bench.Calls[^1] != kind;
        Assert.True(Started().Core.Alarms.Stands(AlarmId.StorageCorrupt));
    }

    [Fact]
    public void A_save_that_is_not_taken_costs_the_logbook_nothing_and_is_noted_once()
    {
        MainLoop loop = Started();
        _bench.StorageWorks = () => _bench.Calls[^1] != "save";
        _bench.Board.LateMs.Returns(60_000);
        for (int turn = 0; turn < 5; turn++)
            Turn(loop);
        Assert.Single(Raised(loop), AlarmId.ScanOverrun);
        Assert.Single(Raised(loop), AlarmId.StorageCorrupt);
    }

    [Fact]
    public void A_write_that_was_lost_is_told_by_the_very_next_scan()
    {
        MainLoop loop = Started();
        _bench.StorageWorks = () => _bench.Calls[^1] != "save";
        _bench.Board.LateMs.Returns(60_000);
        _bench.Waits.Clear();
        loop.Run();
        Assert.Equal(1, Assert.Single(_bench.Waits));
    }

    [Fact]
    public void States_of_another_length_are_told_since_what_stood_in_them_is_lost()
    {
        _bench.Start();
        IRestRule rule = Substitute.For<IRestRule>();
        rule.When(one => one.Transfer(Arg.Any<StateStream>())).Do(call => call.Arg<StateStream>().Number(7));
        MainLoop loop = _bench.Start(rule);
        Assert.False(loop.StateRestored);
        Turn(loop);
        Assert.True(loop.Core.Alarms.Stands(AlarmId.StorageCorrupt));
        Assert.Contains(LogEvent.StateForeign, Noted(loop));
    }

    private MainLoop Started()
    {
        MainLoop loop = _bench.Start();
        Turn(loop);
        return loop;
    }

    private void Turn(MainLoop loop)
    {
        _bench.NowMs += 200;
        Assert.True(loop.RunOnce());
    }

    private void Reset(MainLoop loop)
    {
        // Beyond the delay off.
        _bench.NowMs += 120_000;
        Turn(loop);
        _bench.OnRead = inputs => inputs.SetDown(Button.Reset, true);
        Turn(loop);
        Turn(loop);
        _bench.OnRead = _ => { };
        Turn(loop);
    }

    private static List<int> Noted(MainLoop loop) => Entries(loop, entry => entry.What);

    private static List<AlarmId> Raised(MainLoop loop) => Entries(loop, entry => entry.What == (int)ScanEvent.AlarmRaised ? (AlarmId)entry.Subject : (AlarmId)(-1));

    private static List<T> Entries<T>(MainLoop loop, Func<LogEntry, T> what)
    {
        var entries = new List<T>();
        var entry = new LogEntry();
        for (int place = 0; place < loop.Memory.Log.Places; place++)
        {
            if (loop.Memory.Log.TryRead(place, entry))
                entries.Add(what(entry));
        }

        return entries;
    }
}
