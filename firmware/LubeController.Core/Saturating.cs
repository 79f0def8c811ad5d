namespace LubeController.Core;

/// <summary>Arithmetic on durations and counts that stops at the top instead of wrapping.</summary>
public static class Saturating
{
    /// <summary>A duration that no timer ever reaches: "long ago" or "never".</summary>
    public const int Never = int.MaxValue;

    /// <summary>The sum of two numbers that are not negative, at most <see cref="int.MaxValue"/>.</summary>
    public static int Add(int left, int right) => left > int.MaxValue - right ? int.MaxValue : left + right;

    /// <summary>What is left of a limit, at least 1: the scan after which it is reached is still to come.</summary>
    public static int Remaining(int limit, int elapsed) => elapsed >= limit ? 1 : limit - elapsed;

    /// <summary>The smaller of two numbers.</summary>
    public static int Min(int left, int right) => left < right ? left : right;
}
