namespace LubeController.Core;

/// <summary>A measured value that is too low from below its limit until it is back above the limit and its hysteresis.</summary>
internal sealed class LimitWatch
{
    private bool _isLow;
    private int _quietLow = int.MinValue;
    private int _quietHigh = int.MaxValue;

    /// <summary>Whether the value is too low.</summary>
    public bool IsLow => _isLow;

    /// <summary>Lowest value that would say the same as the present one.</summary>
    public int QuietLow => _quietLow;

    /// <summary>Highest value that would say the same as the present one.</summary>
    public int QuietHigh => _quietHigh;

    /// <summary>Takes a value.</summary>
    /// <param name="value">The value.</param>
    /// <param name="watched">Whether the value is watched at all.</param>
    /// <param name="limit">Lowest value that is not too low.</param>
    /// <param name="hysteresis">How far above the limit it must come back, 0 or more.</param>
    public void Sample(int value, bool watched, int limit, int hysteresis)
    {
        if (!watched)
        {
            _isLow = false;
            _quietLow = int.MinValue;
            _quietHigh = int.MaxValue;
            return;
        }

        int back = limit + hysteresis;
        _isLow = _isLow ? value < back : value < limit;
        _quietLow = _isLow ? int.MinValue : limit;
        _quietHigh = _isLow ? back - 1 : int.MaxValue;
    }

    public bool IsQuiet(int value) => value >= _quietLow && value <= _quietHigh;

    public void Transfer(StateStream stream)
    {
        _isLow = stream.Flag(_isLow);
        _quietLow = stream.Counter(_quietLow);
        _quietHigh = stream.Counter(_quietHigh);
    }
}
