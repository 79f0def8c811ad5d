using System;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Comparisons by relative error.</summary>
internal static class Near
{
    /// <summary>Within half a unit of the last figure that the source gives.</summary>
    internal static void Figure(double printed, double halfUnit, double actual) =>
        Assert.True(Math.Abs(actual - printed) <= halfUnit, FormattableString.Invariant($"{actual:R}, printed is {printed:R}"));

    internal static void Relative(double expected, double actual, double bound) =>
        Assert.True(Math.Abs(actual - expected) <= bound * Math.Abs(expected), FormattableString.Invariant($"{actual:R} for {expected:R}"));
}
