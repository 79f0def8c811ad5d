using System.Text;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>The check value of blocks.</summary>
public sealed class Crc32Tests
{
    // Published check value of CRC-32 (IEEE 802.3): the digits 1 to 9 give CBF43926.
    [Fact]
    public void The_nine_digits_give_the_published_check_value() =>
        Assert.Equal(0xCBF43926, Crc32.Compute(Encoding.ASCII.GetBytes("123456789"), 0, 9));

    [Fact]
    public void Only_the_bytes_from_the_offset_count() =>
        Assert.Equal(0xCBF43926, Crc32.Compute(Encoding.ASCII.GetBytes("xx123456789yy"), 2, 9));

    [Fact]
    public void Nothing_gives_zero() => Assert.Equal(0u, Crc32.Compute([], 0, 0));
}
