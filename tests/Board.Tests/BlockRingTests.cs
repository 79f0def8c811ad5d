using System;
using LubeController.Emulator.Storage;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>Blocks in turn, so that a cut in the middle of a write leaves the older ones whole, and what a cut leaves is told from what rots.</summary>
public sealed class BlockRingTests
{
    private const int First = 3;
    private const int Payload = 50;
    private const int FrameLength = BlockRing.HeaderLength + Payload + BlockRing.FinishLength;

    private readonly FlashStorage _storage = new(8, 128);

    [Fact]
    public void An_erased_storage_holds_nothing_and_nothing_is_corrupt()
    {
        BlockRing ring = Loaded();
        Assert.False(ring.AnyWhole);
        Assert.Equal((0, 0), (ring.Corrupt, ring.Written));
        Assert.False(ring.LoadNewest());
    }

    [Fact]
    public void Writes_go_round_the_blocks_and_wear_them_alike()
    {
        BlockRing ring = Loaded();
        for (int write = 1; write <= 9; write++)
            Write(ring, write);
        Assert.Equal([0, 0, 0, 3, 3, 3, 0, 0], Array.ConvertAll([0, 1, 2, 3, 4, 5, 6, 7], _storage.Writes));
        Assert.Equal(9u, ring.SequenceOf(ring.Newest));
        Assert.Equal(9, Newest());
    }

    [Theory]
    [InlineData(TearRest.Old)]
    [InlineData(TearRest.Erased)]
    [InlineData(TearRest.Garbage)]
    public void A_write_cut_at_any_byte_leaves_the_older_or_completes_the_newer_and_is_no_corruption(TearRest rest)
    {
        for (int before = 0; before <= 7; before++)
        {
            for (int cut = 0; cut <= FrameLength; cut++)
            {
                var storage = new FlashStorage(8, 128, (ulong)cut);
                BlockRing ring = Loaded(storage);
                for (int write = 1; write <= before; write++)
                    Write(ring, write);
                storage.TearNextWriteAt(cut, rest);
                Write(ring, before + 1);
                storage.PowerBack();
                BlockRing next = Loaded(storage);
                int found = next.LoadNewest() ? next.Frame[BlockRing.HeaderLength] : 0;
                Assert.Equal(cut >= FrameLength - BlockRing.FinishLength ? before + 1 : before, found);
                Assert.Equal(0, next.Corrupt);
                Write(next, before + 2);
                Assert.Equal(0, Loaded(storage).Corrupt);
            }
        }
    }

    [Fact]
    public void Every_bit_that_flips_in_a_finished_block_is_told_but_those_of_its_end_and_of_the_oldest_which_cost_nothing()
    {
        BlockRing ring = Loaded();
        for (int write = 1; write <= 7; write++)
            Write(ring, write);
        for (int block = First; block < First + 3; block++)
        {
            for (int bit = 0; bit < 8 * FrameLength; bit++)
            {
                _storage.FlipBit(block, bit);
                BlockRing found = Loaded();
                bool end = bit >= 8 * (FrameLength - BlockRing.FinishLength);
                Assert.True(found.Corrupt == (end || block == First + 1 ? 0 : 1), $"block {block}, bit {bit}: {found.Corrupt}");
                Assert.True(found.LoadNewest());
                Assert.Equal(end || block != First ? 7 : 6, found.Frame[BlockRing.HeaderLength]);
                _storage.FlipBit(block, bit);
            }
        }
    }

    [Fact]
    public void After_a_flip_the_block_is_the_next_to_be_written_and_the_whole_ones_stay()
    {
        BlockRing ring = Loaded();
        for (int write = 1; write <= 4; write++)
            Write(ring, write);
        _storage.FlipBit(First, 8 * 30);
        BlockRing next = Loaded();
        Write(next, 9);
        Assert.Equal((2, 9, 2), (_storage.Writes(First) - 1, Newest(), next.OlderThan(next.Newest)));
        Assert.Equal(0, Loaded().Corrupt);
    }

    [Fact]
    public void A_block_that_fails_is_passed_over_and_the_newest_is_never_overwritten()
    {
        BlockRing ring = Loaded();
        Write(ring, 1);
        _storage.FailNextWrites(1);
        Write(ring, 2);
        Assert.Equal((2, 2), (ring.Newest, Newest()));
        _storage.FailNextWrites(2);
        Assert.False(WriteTo(ring, 3));
        Assert.Equal(2, Newest());
    }

    [Fact]
    public void The_sequence_wraps_without_losing_the_newest()
    {
        // Three writes, then their sequence numbers are moved to the top as another program would.
        BlockRing ring = Loaded();
        for (int write = 1; write <= 3; write++)
            Write(ring, write);
        byte[] frame = new byte[128];
        for (int block = First; block < First + 3; block++)
        {
            _storage.Read(block, frame);
            uint sequence = unchecked(uint.MaxValue - 3 + BitConverter.ToUInt32(frame, 8));
            BitConverter.TryWriteBytes(frame.AsSpan(8), sequence);
            BitConverter.TryWriteBytes(frame.AsSpan(6), (ushort)Crc32.ComputeTwo(frame, 4, 2, 8, 8));
            BitConverter.TryWriteBytes(frame.AsSpan(16), Crc32.ComputeTwo(frame, 0, 16, 20, Payload));
            _storage.Write(block, frame, FrameLength);
        }

        for (int write = 4; write < 10; write++)
        {
            BlockRing again = Loaded();
            Write(again, write);
            Assert.Equal(write, Newest());
        }
    }

    [Fact]
    public void A_block_of_another_kind_version_or_length_counts_as_none_and_not_as_corrupt()
    {
        Write(Loaded(), 1);
        foreach (BlockRing other in new[] { Ring(_storage, BlockKind.Boot, 1, Payload), Ring(_storage, BlockKind.State, 2, Payload), Ring(_storage, BlockKind.State, 1, Payload - 1) })
        {
            other.Load();
            Assert.Equal((false, 0, 1), (other.AnyWhole, other.Corrupt, other.Foreign));
        }
    }

    [Fact]
    public void A_payload_longer_than_a_block_is_never_written()
    {
        BlockRing ring = Ring(_storage, BlockKind.State, 1, 101);
        Assert.False(ring.Write(101));
        Assert.Equal(0L, _storage.TotalWrites);
    }

    private static BlockRing Ring(FlashStorage storage, BlockKind kind, int version, int payload) => new(storage, kind, version, First, 3, payload, false);

    private static bool WriteTo(BlockRing ring, int value)
    {
        for (int at = 0; at < Payload; at++)
            ring.Frame[BlockRing.HeaderLength + at] = (byte)(value * (at + 1));
        return ring.Write(Payload);
    }

    private static void Write(BlockRing ring, int value) => WriteTo(ring, value);

    private static BlockRing Loaded(FlashStorage storage)
    {
        BlockRing ring = Ring(storage, BlockKind.State, 1, Payload);
        ring.Load();
        return ring;
    }

    private BlockRing Loaded() => Loaded(_storage);

    private int Newest()
    {
        BlockRing ring = Loaded();
        return ring.LoadNewest() ? ring.Frame[BlockRing.HeaderLength] : -1;
    }
}
