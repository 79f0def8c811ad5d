using LubeController.Plant.Numbers;

namespace LubeController.Plant.Sensors;

/// <summary>A core that makes and breaks under vibration, at times drawn from a seed.</summary>
internal sealed class LooseCore(SeededGenerator generator)
{
    private long _madeUs;
    private long _brokenUs;
    private bool _isBroken;

    internal CableCore Core { get; private set; }

    internal long NextUs { get; private set; } = long.MaxValue;

    internal void Start(long nowUs, CableCore core, long madeUs, long brokenUs)
    {
        Core = core;
        _madeUs = madeUs;
        _brokenUs = brokenUs;
        _isBroken = false;
        NextUs = nowUs + Draw(madeUs);
    }

    internal void Stop() => NextUs = long.MaxValue;

    /// <summary>Makes or breaks.</summary>
    /// <returns>Whether it is broken now.</returns>
    internal bool Toggle()
    {
        _isBroken = !_isBroken;
        NextUs += Draw(_isBroken ? _brokenUs : _madeUs);
        return _isBroken;
    }

    private long Draw(long meanUs) => 1 + (long)((meanUs - 1) * (0.5 + generator.NextFraction()));
}
