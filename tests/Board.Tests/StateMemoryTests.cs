using System;
using LubeController.Core;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>Two blocks in turn, so that a cut in the middle of a write leaves the older one whole.</summary>
public sealed class StateMemoryTests
{
    private readonly BoardBench _bench = new();
    private readonly Inputs _inputs = new();

    [Fact]
    public void An_empty_storage_holds_no_state()
    {
        Controller core = Core();
        Assert.False(Memory(core).Load(core));
    }

    [Fact]
    public void Saves_go_to_the_two_blocks_in_turn()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        memory.Save(core);
        int first = _bench.Blocks[0] != null ? 0 : 1;
        Assert.Null(_bench.Blocks[1 - first]);
        memory.Save(core);
        Assert.NotNull(_bench.Blocks[1 - first]);
        byte[] second = (byte[])_bench.Blocks[1 - first]!.Clone();
        memory.Save(core);
        Assert.Equal(second, _bench.Blocks[1 - first]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_newest_of_two_is_loaded(int saves)
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        for (int save = 1; save <= saves; save++)
            SaveWith(memory, core, save);
        Assert.Equal(saves, Loaded());
    }

    [Fact]
    public void A_write_cut_at_any_byte_leaves_the_older_state_or_completes_the_newer()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        SaveWith(memory, core, 1);
        SaveWith(memory, core, 2);
        byte[] older = (byte[])_bench.Blocks[1]!.Clone();
        byte[] other = (byte[])_bench.Blocks[0]!.Clone();
        SaveWith(memory, core, 3);
        byte[] newer = (byte[])_bench.Blocks[1]!.Clone();
        int length = 12 + core.StateLength;
        for (int cut = 0; cut <= length; cut++)
        {
            byte[] torn = (byte[])older.Clone();
            Array.Copy(newer, torn, cut);
            _bench.Blocks[0] = (byte[])other.Clone();
            _bench.Blocks[1] = torn;
            bool complete = torn.AsSpan(0, length).SequenceEqual(newer.AsSpan(0, length));
            Assert.Equal(complete ? 3 : 2, Loaded());
        }
    }

    [Fact]
    public void After_a_torn_block_the_next_save_overwrites_it_and_not_the_whole_one()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        SaveWith(memory, core, 1);
        SaveWith(memory, core, 2);
        SaveWith(memory, core, 3);
        _bench.Blocks[1]![20] ^= 1;
        Controller next = Core();
        StateMemory again = Memory(next);
        Assert.True(again.Load(next));
        byte[] whole = (byte[])_bench.Blocks[0]!.Clone();
        SaveWith(again, next, 9);
        Assert.Equal(whole, _bench.Blocks[0]);
        Assert.Equal(9, Loaded());
    }

    [Fact]
    public void With_both_blocks_bad_there_is_no_state()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        SaveWith(memory, core, 1);
        SaveWith(memory, core, 2);
        _bench.Blocks[0]![30] ^= 1;
        _bench.Blocks[1]![30] ^= 1;
        Assert.False(Memory(core).Load(core));
    }

    [Fact]
    public void A_whole_block_that_the_core_refuses_leaves_the_other()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        SaveWith(memory, core, 1);
        SaveWith(memory, core, 2);

        // Changed by a program that knows the check value of the block, but not the state's own.
        _bench.Blocks[0]![100] ^= 1;
        Reseal(_bench.Blocks[0]!, core.StateLength);
        Assert.Equal(1, Loaded());
    }

    [Fact]
    public void The_sequence_wraps_without_overwriting_the_newest_block()
    {
        Controller core = Core();
        StateMemory memory = Memory(core);
        SaveWith(memory, core, 1);
        SaveWith(memory, core, 2);
        SetSequence(1, uint.MaxValue, core.StateLength);
        SetSequence(0, uint.MaxValue - 1, core.StateLength);
        StateMemory again = Memory(core);
        Assert.True(again.Load(core));
        for (int save = 3; save < 8; save++)
        {
            byte[]? even = (byte[])_bench.Blocks[0]!.Clone();
            byte[]? odd = (byte[])_bench.Blocks[1]!.Clone();
            SaveWith(again, core, save);
            Assert.Equal(save, Loaded());
            bool evenKept = even.AsSpan().SequenceEqual(_bench.Blocks[0]);
            Assert.NotEqual(evenKept, odd.AsSpan().SequenceEqual(_bench.Blocks[1]));
            Assert.Equal(save % 2 == 0, evenKept);
        }
    }

    [Fact]
    public void A_storage_that_refuses_is_counted()
    {
        _bench.StorageWorks = () => false;
        Controller core = Core();
        StateMemory memory = Memory(core);
        memory.Save(core);
        memory.Save(core);
        Assert.Equal(2, memory.FailedWrites);
    }

    [Fact]
    public void A_state_that_cannot_be_saved_is_counted_and_nothing_is_written()
    {
        Controller core = Core();
        var memory = new StateMemory(_bench.Storage, core.StateLength - 1);
        memory.Save(core);
        Assert.Equal(1, memory.FailedWrites);
        Assert.Null(_bench.Blocks[0] ?? _bench.Blocks[1]);
    }

    private static void Reseal(byte[] block, int stateLength)
    {
        for (int at = 8; at < 12; at++)
            block[at] = 0;
        uint check = Crc32.Of(block, 0, 12 + stateLength);
        for (int at = 0; at < 4; at++)
            block[8 + at] = (byte)(check >> (8 * at));
    }

    private Controller Core() => new(_inputs, new Outputs(), new Settings(), null);

    private StateMemory Memory(Controller core) => new(_bench.Storage, core.StateLength);

    /// <summary>The number of refused presses tells the states apart.</summary>
    private void SaveWith(StateMemory memory, Controller core, int refused)
    {
        uint now = 0;
        while (core.PressesRefused < refused)
        {
            _inputs.Start = !_inputs.Start;
            core.Scan(now);
            core.Scan(now += 100);
        }

        memory.Save(core);
    }

    private int Loaded()
    {
        Controller core = Core();
        return Memory(core).Load(core) ? core.PressesRefused : -1;
    }

    private void SetSequence(int block, uint sequence, int stateLength)
    {
        byte[] bytes = _bench.Blocks[block]!;
        for (int at = 0; at < 4; at++)
            bytes[at] = (byte)(sequence >> (8 * at));
        Reseal(bytes, stateLength);
    }
}
