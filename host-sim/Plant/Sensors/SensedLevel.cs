using System;

namespace LubeController.Plant.Sensors;

/// <summary>
/// The level that a switch's whole loop gives (switch, cable, supply and input), beside the one that the same loop would
/// give without its faults.
/// </summary>
internal sealed class SensedLevel
{
    private readonly SensorLoopDescription _description;
    private readonly SensorLoop _loop;
    private readonly SensorLoop _sound;
    private bool _wireBroken;
    private bool _signalBroken;
    private double _ownV;
    private double _supplyPart = 1;

    internal SensedLevel(SensorLoopDescription description, bool present, ulong seed)
    {
        _description = description;
        _ownV = description.SupplyV;
        _loop = new SensorLoop(description, present, seed);
        _sound = new SensorLoop(description, present, seed);
    }

    /// <summary>The loop with its faults.</summary>
    internal SensorLoop Loop => _loop;

    internal bool On => _loop.On;

    internal bool SoundOn => _sound.On;

    internal long NextUs => Math.Min(_loop.NextEventUs, _sound.NextEventUs);

    /// <summary>Takes over where the target is, now.</summary>
    /// <param name="timeUs">The present.</param>
    /// <param name="present">Whether the target is present, as the faulty loop has it.</param>
    /// <param name="truly">Whether it truly is.</param>
    internal void Follow(long timeUs, bool present, bool truly)
    {
        _loop.AdvanceTo(timeUs);
        _loop.SetPresent(present);
        _sound.AdvanceTo(timeUs);
        _sound.SetPresent(truly);
    }

    /// <summary>Breaks the signal core besides whatever faults of the loop do.</summary>
    internal void SetWireBroken(bool broken)
    {
        if (broken == _wireBroken)
            return;
        _wireBroken = broken;
        _loop.SetCoreBroken(CableCore.Signal, _wireBroken || _signalBroken);
    }

    /// <summary>Feeds the loop with this part of its voltage, as far as the control supply feeds it: a NAMUR amplifier keeps its own.</summary>
    internal void SetSupplyPart(double part)
    {
        if (part == _supplyPart || _description.Switch.Output == SwitchOutput.Namur)
            return;
        _supplyPart = part;
        _loop.SetSupply(_ownV * _supplyPart);
    }

    /// <summary>Gives the loop another supply, V; null: its own.</summary>
    internal void SetOwnSupply(double? volts)
    {
        _ownV = volts ?? _description.SupplyV;
        _loop.SetSupply(_ownV * _supplyPart);
    }

    /// <summary>Breaks a core or mends it; the signal core may be broken besides (<see cref="SetWireBroken"/>).</summary>
    internal void SetCoreBroken(CableCore core, bool broken)
    {
        if (core == CableCore.Signal)
            _signalBroken = broken;
        _loop.SetCoreBroken(core, broken || (core == CableCore.Signal && _wireBroken));
    }
}
