using Xunit;

namespace LubeController.Tests;

public sealed class PlaceholderTests
{
    [Fact]
    public void The_room_builds() => Assert.True(typeof(PlaceholderTests).IsSealed);
}
