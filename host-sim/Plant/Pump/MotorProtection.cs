using System;

namespace LubeController.Plant.Pump;

/// <summary>
/// The thermal overload relay of the pump's motor: a motor that stands under power warms it until it trips, which takes the
/// motor off and closes its signalling contact; once cool it resets by itself. Warmth is a fraction of what trips it, and goes
/// in straight lines (IEC 60947-4-1 bounds the tripping times of each class; its curves are not followed).
/// </summary>
internal sealed class MotorProtection(double tripS, double coolS)
{
    private const double UsPerS = 1e6;

    private readonly double _warmPerUs = 1 / (tripS * UsPerS);
    private readonly double _coolPerUs = 1 / (coolS * UsPerS);
    private double _warmth;
    private bool _warms;
    private long _sinceUs;

    /// <summary>Whether it has tripped.</summary>
    public bool Tripped { get; private set; }

    /// <summary>When it next trips or resets as things stand, us, rounded up; <see cref="long.MaxValue"/> for never.</summary>
    public long NextUs { get; private set; } = long.MaxValue;

    /// <summary>Tells whether the motor stands under power from now on.</summary>
    public void Follow(long nowUs, bool standsUnderPower)
    {
        if (standsUnderPower == _warms)
            return;
        Take(nowUs);
        _warms = standsUnderPower;
        Plan();
    }

    /// <summary>Trips or resets if that is due.</summary>
    public void AdvanceTo(long nowUs)
    {
        if (nowUs < NextUs)
            return;
        Take(nowUs);
        Tripped = !Tripped;
        _warmth = Tripped ? 1 : 0;
        _warms &= !Tripped;
        Plan();
    }

    private void Take(long nowUs)
    {
        double passedUs = nowUs - _sinceUs;
        _warmth = Math.Clamp(_warmth + (_warms ? passedUs * _warmPerUs : -passedUs * _coolPerUs), 0, 1);
        _sinceUs = nowUs;
    }

    private void Plan() => NextUs = _warms ? _sinceUs + (long)Math.Ceiling((1 - _warmth) / _warmPerUs)
        : Tripped ? _sinceUs + (long)Math.Ceiling(_warmth / _coolPerUs)
        : long.MaxValue;
}
