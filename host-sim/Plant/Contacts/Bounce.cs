using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Contacts;

/// <summary>
/// A contact that goes to its new position, leaves it again a few times, and stays. Durations are drawn so that their
/// mean is the described one and none exceeds the worst: nine in ten evenly from nothing to what is left for the mean,
/// one in ten evenly from there to the worst.
/// </summary>
internal sealed class Bounce(BounceDescription description, SeededGenerator generator)
{
    private const double LongShare = 0.1;

    private long _startUs;
    private long _durationUs;
    private int _toggles;
    private int _done;
    private bool _rest;

    internal bool Closed { get; private set; }

    /// <summary>When the contact next changes by itself, us; <see cref="long.MaxValue"/> when it rests.</summary>
    internal long NextUs => _done < _toggles ? _startUs + (_durationUs * (_done + 1) / _toggles) : long.MaxValue;

    internal void Set(bool closed)
    {
        Closed = _rest = closed;
        _toggles = _done = 0;
    }

    internal void Move(long nowUs, bool closed)
    {
        if (closed == _rest)
            return;
        Set(closed);
        if (description.MeanUs == 0)
            return;
        _durationUs = Draw();
        _startUs = nowUs;
        // An even number of toggles ends where the contact belongs. Each takes a microsecond at least.
        _toggles = _durationUs < 8 ? 0 : 2 * (1 + (int)(3 * generator.NextFraction()));
    }

    internal void Toggle()
    {
        _done++;
        Closed = !Closed;
    }

    // Mean of the two ranges: 0.9 * s / 2 + 0.1 * (s + w) / 2 = m, so s = 2 m - 0.1 w; where that is negative, s is 0 and the mean cannot be met.
    private long Draw()
    {
        double shortUs = Math.Clamp((2 * description.MeanUs) - (LongShare * description.WorstUs), 0, description.WorstUs);
        bool isLong = generator.NextFraction() < LongShare;
        double share = generator.NextFraction();
        return (long)(isLong ? shortUs + (share * (description.WorstUs - shortUs)) : share * shortUs);
    }
}
