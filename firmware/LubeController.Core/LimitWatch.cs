namespace LubeController.Core;

/// <summary>A measured value that is too low from below its limit until it is back above the limit and its hysteresis.</summary>
internal sealed class LimitWatch
{
    /// <summary>Whether the value is too low.</summary>
    public bool IsLow { get; private set; }

    /// <summary>Lowest value that would say the same as the present one.</summary>
    public int QuietLow { get; private set; } = int.MinValue;

    /// <summary>Highest value that would say the same as the present one.</summary>
    public int QuietHigh { get; private set; } = int.MaxValue;

    /// <summary>Takes a value.</summary>
    /// <param name="value">The value.</param>
    /// <param name="judged">Whether it is judged at all.</param>
    /// <param name="limit">Lowest value that is not too low.</param>
    /// <param name="hysteresis">How far above the limit it must come back, 0 or more.</param>
    public void Sample(int value, bool judged, int limit, int hysteresis)
    {
        if (!judged)
        {
            IsLow = false;
            QuietLow = int.MinValue;
            QuietHigh = int.MaxValue;
            return;
        }

        int back = limit + hysteresis;
        IsLow = IsLow ? value < back : value < limit;
        QuietLow = IsLow ? int.MinValue : limit;
        QuietHigh = IsLow ? back - 1 : int.MaxValue;
    }

    public bool IsQuiet(int value) => value >= QuietLow && value <= QuietHigh;

    public void Transfer(StateStream stream)
    {
        IsLow = stream.Flag(IsLow);
        QuietLow = stream.Counter(QuietLow);
        QuietHigh = stream.Counter(QuietHigh);
    }
}
