using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator.Storage;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>A ring of entries, each for itself.</summary>
public sealed class LogbookTests
{
    private const int First = 2;
    private const int Blocks = 3;

    private readonly FlashStorage _storage = new(6, 160);

    [Fact]
    public void Entries_come_back_in_order_with_their_numbers_and_the_newest_survive_the_wrap()
    {
        Logbook log = Open();
        Assert.Equal(4 * Blocks, log.Places);
        for (int entry = 1; entry <= 23; entry++)
            Append(log, entry);
        int[] details = [.. Read(Open()).Select(entry => entry.Detail)];
        Assert.Equal(Enumerable.Range(13, 11), details);
        uint[] numbers = [.. Read(Open()).Select(entry => entry.Sequence)];
        Assert.Equal(Enumerable.Range(0, 11).Select(index => numbers[0] + (uint)index), numbers);
    }

    [Theory]
    [InlineData(TearRest.Erased)]
    [InlineData(TearRest.Garbage)]
    public void A_torn_entry_loses_only_itself_leaves_a_gap_and_is_no_corruption(TearRest rest)
    {
        for (int cut = 0; cut <= LogEntry.Length; cut++)
        {
            var storage = new FlashStorage(6, 160, (ulong)cut);
            Logbook log = Open(storage);
            Append(log, 1);
            Append(log, 2);
            storage.TearNextWriteAt(cut, rest);
            Append(log, 3);
            storage.PowerBack();
            Logbook next = Open(storage);
            Append(next, 4);
            bool whole = cut >= LogEntry.Length - 4;
            Logbook last = Open(storage);
            List<LogEntry> read = Read(last);
            Assert.Equal(whole ? [1, 2, 3, 4] : [1, 2, 4], read.Select(entry => entry.Detail));
            Assert.Equal(0, last.CorruptEntries + last.Ring.Corrupt);
            bool untouched = cut == 0 && rest == TearRest.Erased;
            Assert.Equal(read[0].Sequence + (untouched ? 2u : 3u), read[^1].Sequence);
        }
    }

    [Fact]
    public void Every_bit_that_flips_in_a_finished_entry_is_told_but_those_of_its_end_which_costs_nothing()
    {
        Logbook log = Open();
        Append(log, 1);
        Append(log, 2);
        for (int bit = 0; bit < 8 * LogEntry.Length; bit++)
        {
            _storage.FlipBit(First, (8 * LogEntry.Length) + bit);
            bool end = bit >= 8 * (LogEntry.Length - 4);
            Logbook found = Open();
            Assert.Equal(end ? 0 : 1, found.CorruptEntries);
            Assert.Equal(end ? [1, 2] : [2], Read(found).Select(entry => entry.Detail));
            _storage.FlipBit(First, (8 * LogEntry.Length) + bit);
        }
    }

    [Theory]
    [InlineData(TearRest.Old)]
    [InlineData(TearRest.Erased)]
    [InlineData(TearRest.Garbage)]
    public void A_torn_turn_to_the_next_block_costs_the_entries_of_that_block_alone(TearRest rest)
    {
        for (int cut = 0; cut <= BlockRing.HeaderLength + BlockRing.FinishLength; cut++)
        {
            var storage = new FlashStorage(6, 160, (ulong)cut);
            Logbook log = Open(storage);
            for (int entry = 1; entry <= 12; entry++)
                Append(log, entry);
            storage.TearNextWriteAt(cut, rest);
            Append(log, 13);
            storage.PowerBack();
            Logbook next = Open(storage);
            Append(next, 14);
            Logbook last = Open(storage);
            int[] read = [.. Read(last).Select(entry => entry.Detail)];
            Assert.Equal([5, 6, 7, 8, 9, 10, 11, 12, 14], read.SkipWhile(entry => entry < 5));
            Assert.Equal(0, last.CorruptEntries + last.Ring.Corrupt);
        }
    }

    [Fact]
    public void The_time_powered_goes_on_from_the_newest_entry()
    {
        var uptime = new Uptime();
        var log = new Logbook(_storage, First, Blocks, uptime);
        uptime.Advance(12_345);
        Append(log, 1);
        var next = new Uptime();
        _ = new Logbook(_storage, First, Blocks, next);
        Assert.Equal((12, 345), (next.Seconds, next.Milliseconds));
        next.RaiseTo(5, 0);
        next.RaiseTo(99, 1000);
        Assert.Equal((12, 345), (next.Seconds, next.Milliseconds));
    }

    [Fact]
    public void An_entry_that_the_storage_does_not_take_loses_no_other()
    {
        Logbook log = Open();
        _storage.FailNextWrites(4);
        Append(log, 1);
        Append(log, 2);
        Assert.Equal([2], Read(Open()).Select(entry => entry.Detail));
    }

    private static Logbook Open(FlashStorage storage) => new(storage, First, Blocks, new Uptime());

    private static void Append(Logbook log, int detail)
    {
        var entry = new LogEntry();
        entry.Fill(LogEvent.EventsLost, 7, detail);
        log.Append(entry);
    }

    private static List<LogEntry> Read(Logbook log)
    {
        var entries = new List<LogEntry>();
        for (int place = 0; place < log.Places; place++)
        {
            var entry = new LogEntry();
            if (log.TryRead(place, entry))
                entries.Add(entry);
        }

        return entries;
    }

    private Logbook Open() => Open(_storage);
}
