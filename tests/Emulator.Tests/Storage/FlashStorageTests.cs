using System;
using LubeController.Emulator.Storage;
using Xunit;

namespace LubeController.Emulator.Tests.Storage;

/// <summary>Flash that tears, fails, wears out and flips bits as it is told.</summary>
public sealed class FlashStorageTests
{
    private static readonly byte[] Ones = [1, 1, 1, 1, 1, 1];
    private static readonly byte[] Twos = [2, 2, 2, 2];

    private readonly FlashStorage _flash = new(2, 8);

    [Fact]
    public void It_is_erased_at_first_and_a_write_erases_what_it_does_not_cover()
    {
        Assert.Equal([255, 255, 255, 255, 255, 255, 255, 255], _flash.Block(1).ToArray());
        Assert.True(_flash.Write(1, Ones, 6));
        Assert.True(_flash.Write(1, Twos, 4));
        Assert.Equal([2, 2, 2, 2, 255, 255, 255, 255], _flash.Block(1).ToArray());
        Assert.Equal((0, 2, 0), (_flash.Writes(0), _flash.Writes(1), _flash.Programs(1)));
    }

    [Fact]
    public void A_program_only_takes_bits_away_and_counts_apart()
    {
        Assert.True(_flash.Program(0, 2, Twos, 2));
        Assert.True(_flash.Program(0, 3, [7], 1));
        Assert.Equal([255, 255, 2, 2, 255, 255, 255, 255], _flash.Block(0).ToArray());
        Assert.Equal((0, 2), (_flash.Writes(0), _flash.Programs(0)));
        Assert.False(_flash.Program(0, 7, Twos, 2));
    }

    [Theory]
    [InlineData(TearRest.Old, new byte[] { 2, 2, 1, 1, 1, 1, 255, 255 })]
    [InlineData(TearRest.Erased, new byte[] { 2, 2, 255, 255, 255, 255, 255, 255 })]
    public void A_torn_write_leaves_what_was_ordered_and_takes_the_power(TearRest rest, byte[] expected)
    {
        _flash.Write(0, Ones, 6);
        _flash.TearNextWriteAt(2, rest);
        Assert.True(_flash.TearWaits);
        Assert.False(_flash.Write(0, Twos, 4));
        Assert.Equal(expected, _flash.Block(0).ToArray());
        Assert.True(_flash.PowerLost);
        Assert.False(_flash.Write(1, Ones, 6));
        Assert.False(_flash.Read(0, new byte[8]));
        _flash.PowerBack();
        Assert.True(_flash.Write(1, Ones, 6));
    }

    [Fact]
    public void Garbage_covers_what_was_to_be_written_and_depends_on_the_seed_alone()
    {
        byte[] first = Torn(1);
        Assert.Equal(2, first[0]);
        Assert.NotEqual(2, first[1]);
        Assert.Equal(255, first[4]);
        Assert.Equal(first, Torn(1));
        Assert.NotEqual(first, Torn(2));

        static byte[] Torn(ulong seed)
        {
            var flash = new FlashStorage(2, 8, seed);
            flash.TearNextWriteAt(1, TearRest.Garbage);
            flash.Write(0, Twos, 4);
            return flash.Block(0).ToArray();
        }
    }

    [Fact]
    public void Writes_fail_as_ordered_and_change_nothing()
    {
        _flash.FailNextWrites(2);
        Assert.False(_flash.Write(0, Ones, 6));
        Assert.False(_flash.Program(0, 0, Ones, 6));
        Assert.True(_flash.Write(0, Twos, 4));
        Assert.Equal((1, 0, 3L), (_flash.Writes(0), _flash.Programs(0), _flash.TotalWrites));
    }

    [Fact]
    public void A_worn_block_refuses_or_takes_one_bit_wrong()
    {
        _flash.WearOutAfter(1);
        Assert.True(_flash.Write(0, Ones, 6));
        Assert.False(_flash.Write(0, Twos, 4));
        Assert.Equal(1, _flash.Block(0)[0]);
        Assert.True(_flash.Write(1, Ones, 6));
        _flash.WearOutAfter(1, WornBlock.FlipsBit);
        Assert.True(_flash.Write(1, Twos, 4));
        int wrong = 0;
        for (int at = 0; at < 4; at++)
            wrong += int.PopCount(_flash.Block(1)[at] ^ 2);
        Assert.Equal(1, wrong);
    }

    [Fact]
    public void A_flipped_bit_is_one_bit_and_one_outside_is_refused()
    {
        _flash.FlipBit(1, 11);
        Assert.Equal(255 - 8, _flash.Block(1)[1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => _flash.FlipBit(1, 64));
        Assert.Throws<ArgumentOutOfRangeException>(() => _flash.FlipBit(2, 0));
    }

    [Fact]
    public void What_is_taken_over_again_undoes_what_was_changed_since()
    {
        var copy = new FlashStorage(2, 8);
        _flash.Write(0, Ones, 6);
        copy.TakeOver(_flash, unchanged: false);
        copy.Write(0, Twos, 4);
        copy.Program(1, 0, Twos, 1);
        copy.TakeOver(_flash, unchanged: true);
        Assert.Equal(_flash.Block(0).ToArray(), copy.Block(0).ToArray());
        Assert.Equal(_flash.Block(1).ToArray(), copy.Block(1).ToArray());
        Assert.Throws<ArgumentException>(() => copy.TakeOver(new FlashStorage(3, 8), unchanged: false));
    }
}
