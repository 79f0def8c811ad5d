using LubeController.Plant.Description;

namespace LubeController.Plant.Sensing;

/// <summary>A switch near one end of one piston's travel, its contact and its wire.</summary>
internal sealed class CycleSwitch
{
    private readonly SwitchContact _contact;
    private readonly bool _atRight;
    private readonly double _trip;
    private readonly double _release;
    private readonly SeededGenerator _generator;
    private bool _chatterLevel;
    private double _chatterMeanUs;

    internal CycleSwitch(CycleSwitchDescription description, double strokeM3, double positionM3, ulong seed)
    {
        _contact = description.Contact;
        _atRight = description.End == Side.R;
        double trip = description.TripTravel * strokeM3;
        double release = (description.TripTravel + description.Hysteresis) * strokeM3;
        _trip = _atRight ? strokeM3 - trip : trip;
        _release = _atRight ? strokeM3 - release : release;
        Actuated = _atRight ? positionM3 >= _trip : positionM3 <= _trip;
        _generator = new SeededGenerator(seed);
    }

    /// <summary>Whether the piston actuates it, whatever contact and wire make of that.</summary>
    internal bool Actuated { get; private set; }

    /// <summary>How often it was newly actuated since the start.</summary>
    internal long TripCrossings { get; private set; }

    internal bool StuckOn { get; set; }

    internal bool StuckOff { get; set; }

    internal bool WireBroken { get; set; }

    /// <summary>When a chattering contact next toggles, us; <see cref="long.MaxValue"/> for a sound one.</summary>
    internal long NextToggleUs { get; private set; } = long.MaxValue;

    /// <summary>The level at the far end of the wire: on is a closed contact on a whole wire.</summary>
    internal bool On
    {
        get
        {
            if (WireBroken)
                return false;
            if (StuckOn || StuckOff)
                return StuckOn;
            return NextToggleUs != long.MaxValue ? _chatterLevel : Sound;
        }
    }

    private bool Sound => Actuated != (_contact == SwitchContact.NormallyClosed);

    /// <summary>The position at which a piston that moves this way changes the switch, or not a number.</summary>
    internal double Target(bool towardsRight)
    {
        if (towardsRight == _atRight)
            return Actuated ? double.NaN : _trip;
        return Actuated ? _release : double.NaN;
    }

    internal void Change()
    {
        Actuated = !Actuated;
        if (Actuated)
            TripCrossings++;
    }

    internal void StartChatter(double meanPeriodS, long nowUs)
    {
        _chatterMeanUs = meanPeriodS * 1e6;
        _chatterLevel = Sound;
        NextToggleUs = nowUs;
        Schedule();
    }

    internal void StopChatter() => NextToggleUs = long.MaxValue;

    internal void Toggle()
    {
        _chatterLevel = !_chatterLevel;
        Schedule();
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(Actuated);
        print.Add(TripCrossings);
        print.Add(StuckOn);
        print.Add(StuckOff);
        print.Add(WireBroken);
        print.Add(NextToggleUs);
        print.Add(_chatterLevel);
        print.Add(_chatterMeanUs);
        print.Add(_generator.State);
    }

    // Half to one and a half mean periods, so that no two gaps are alike and none is endless.
    private void Schedule() => NextToggleUs += 1 + (long)(_chatterMeanUs * (0.5 + _generator.NextFraction()));
}
