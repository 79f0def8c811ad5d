using LubeController.Files.Reading;
using Xunit;

namespace LubeController.Files.Tests.Reading;

public sealed class NearestNameTests
{
    private static readonly string[] Known = ["duration", "scan-period", "seed", "steps", "expect"];

    [Theory]
    [InlineData("durration", "duration")]
    [InlineData("Duration", "duration")]
    [InlineData("sede", "seed")]
    [InlineData("scan_period", "scan-period")]
    [InlineData("zzzzzz", null)]
    [InlineData("", null)]
    public void The_nearest_known_name_is_found(string text, string? expected) => Assert.Equal(expected, NearestName.Of(text, Known));

    [Fact]
    public void Where_none_is_near_the_known_ones_are_listed() =>
        Assert.Equal("known: duration, scan-period, seed, steps, expect", NearestName.Remedy("zzzzzz", Known));

    [Fact]
    public void A_swap_of_neighbours_is_one_edit() => Assert.Equal("seed", NearestName.Of("sede", ["seed", "side"]));
}
