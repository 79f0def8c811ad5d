using System;
using LubeController.Plant.Contacts;
using LubeController.Plant.Numbers;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Sensors;

/// <summary>A switch near one end of one piston's travel, its contact and its wire.</summary>
internal sealed class CycleSwitch
{
    private readonly SwitchContact _contact;
    private readonly bool _atRight;
    private readonly double _trip;
    private readonly double _release;
    private readonly SeededGenerator _generator;
    private readonly SeededGenerator _wireGenerator;
    private bool _chatterLevel;
    private double _chatterMeanUs;
    private long _nextChatterUs = long.MaxValue;
    private long _nextWireUs = long.MaxValue;
    private double _wireOffMeanUs;
    private double _wireOnMeanUs;

    internal CycleSwitch(CycleSwitchDescription description, double strokeM3, double positionM3, ulong seed)
    {
        Section = description.Section;
        _contact = description.Contact;
        _atRight = description.End == Side.R;
        double trip = description.TripTravel * strokeM3;
        double release = (description.TripTravel + description.Hysteresis) * strokeM3;
        _trip = _atRight ? strokeM3 - trip : trip;
        _release = _atRight ? strokeM3 - release : release;
        Actuated = _atRight ? positionM3 >= _trip : positionM3 <= _trip;
        _generator = new SeededGenerator(seed);
        _wireGenerator = new SeededGenerator(~seed);
        if (description.Sensor is { } sensor)
            Sensed = new SensedLevel(sensor with { Switch = sensor.Switch with { Contact = description.Contact } }, Actuated, unchecked(seed + 2));
    }

    /// <summary>Name of the section whose piston it senses.</summary>
    internal string Section { get; }

    /// <summary>Whether the piston actuates it, whatever contact and wire make of that.</summary>
    internal bool Actuated { get; private set; }

    /// <summary>How often it was newly actuated since the start.</summary>
    internal long TripCrossings { get; private set; }

    /// <summary>The loop behind it, or null where the level is the contact's own.</summary>
    internal SensedLevel? Sensed { get; }

    internal bool StuckOn { get; set; }

    internal bool StuckOff { get; set; }

    internal bool WireBroken { get; set; }

    /// <summary>When a chattering contact or a loose wire next toggles, or the loop does something by itself, us; <see cref="long.MaxValue"/> where nothing is to come.</summary>
    internal long NextToggleUs => Math.Min(Math.Min(_nextChatterUs, _nextWireUs), Sensed?.NextUs ?? long.MaxValue);

    /// <summary>The level at the far end of the wire: on is a closed contact on a whole wire.</summary>
    internal bool On
    {
        get
        {
            // Where the loop is described it knows of the wire.
            if (Sensed is null && !IsWired)
                return false;
            if (Sticks)
                return StuckOn;
            if (Sensed is { } sensed)
                return sensed.On;
            return Chatters ? _chatterLevel : Sound;
        }
    }

    /// <summary>Whether the level is other than the sound one.</summary>
    internal bool IsWrong => On != Sound;

    /// <summary>Whether a contact that sticks gives the level.</summary>
    internal bool Sticks => StuckOn || StuckOff;

    /// <summary>Whether a loose wire is interrupted now.</summary>
    internal bool WireInterrupted { get; private set; }

    /// <summary>Whether its wire conducts.</summary>
    internal bool IsWired => !WireBroken && !WireInterrupted;

    private bool Sound => Sensed?.SoundOn ?? Closes;

    private bool Closes => Actuated != (_contact == SwitchContact.NormallyClosed);

    private bool Chatters => _nextChatterUs != long.MaxValue;

    /// <summary>Lets the loop see where the piston is, now.</summary>
    internal void Follow(long timeUs)
    {
        if (Sensed is not { } sensed)
            return;
        bool closes = Chatters ? _chatterLevel : Closes;
        sensed.Follow(timeUs, closes != (_contact == SwitchContact.NormallyClosed), Actuated);
        sensed.SetWireBroken(!IsWired);
    }

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

    /// <summary>The contact toggles from now on, or no more.</summary>
    internal void Chatter(bool on, double meanPeriodS, long nowUs)
    {
        if (!on)
        {
            _nextChatterUs = long.MaxValue;
            return;
        }

        _chatterMeanUs = meanPeriodS * 1e6;
        _chatterLevel = Closes;
        _nextChatterUs = Irregular(nowUs, _chatterMeanUs, _generator);
    }

    /// <summary>The wire is interrupted from now on and whole again, in turns, or whole for good.</summary>
    internal void LoosenWire(bool loose, double offMeanS, double onMeanS, long nowUs)
    {
        WireInterrupted = loose;
        if (!loose)
        {
            _nextWireUs = long.MaxValue;
            return;
        }

        _wireOffMeanUs = offMeanS * 1e6;
        _wireOnMeanUs = onMeanS * 1e6;
        _nextWireUs = Irregular(nowUs, _wireOffMeanUs, _wireGenerator);
    }

    /// <summary>Toggles whatever is due at an instant.</summary>
    internal void ToggleAt(long timeUs)
    {
        if (_nextChatterUs == timeUs)
        {
            _chatterLevel = !_chatterLevel;
            _nextChatterUs = Irregular(timeUs, _chatterMeanUs, _generator);
        }

        if (_nextWireUs == timeUs)
        {
            WireInterrupted = !WireInterrupted;
            _nextWireUs = Irregular(timeUs, WireInterrupted ? _wireOffMeanUs : _wireOnMeanUs, _wireGenerator);
        }
    }

    // Half to one and a half mean periods, so that no two gaps are alike and none is endless.
    private static long Irregular(long nowUs, double meanUs, SeededGenerator generator) =>
        nowUs + 1 + (long)(meanUs * (0.5 + generator.NextFraction()));
}
