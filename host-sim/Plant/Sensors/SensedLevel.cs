using System;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>
/// The level that a switch's whole loop gives (switch, cable, supply and input), beside the one that the same loop would
/// give without its faults.
/// </summary>
internal sealed class SensedLevel
{
    private static readonly CableCore[] Cores = Enum.GetValues<CableCore>();

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

    /// <summary>Sets a fault of the loop, or heals it.</summary>
    /// <param name="kind">The fault.</param>
    /// <param name="cores">The cores that it names, by colour and joined by a plus sign; empty where it names none.</param>
    /// <param name="value">Its magnitude.</param>
    /// <param name="applied">Whether it is set.</param>
    internal void Change(FaultKind kind, string cores, double value, bool applied)
    {
        (CableCore core, CableCore other) = Named(cores);
        switch (kind)
        {
            case FaultKind.SensorTargetFar:
                _loop.SetTargetOffset(applied ? value : 0);
                break;
            case FaultKind.SensorChips:
                _loop.SetSoiling(applied ? Soiling.MetalChips : Soiling.Clean);
                break;
            case FaultKind.SensorWater:
                _loop.SetSoiling(applied ? Soiling.Water : Soiling.Clean);
                break;
            case FaultKind.SensorSupplyLow:
                _ownV = applied ? value : _description.SupplyV;
                _loop.SetSupply(_ownV * _supplyPart);
                break;
            case FaultKind.SensorCoreBroken when core == CableCore.Signal:
                _signalBroken = applied;
                _loop.SetCoreBroken(core, _wireBroken || _signalBroken);
                break;
            case FaultKind.SensorCoreBroken:
                _loop.SetCoreBroken(core, applied);
                break;
            case FaultKind.SensorCoreResistive:
                _loop.SetCoreOhms(core, applied ? value : 0);
                break;
            case FaultKind.SensorCoreShortedToSupply:
                _loop.SetCoreToSupply(core, applied);
                break;
            case FaultKind.SensorCoreShortedToGround:
                _loop.SetCoreToGround(core, applied);
                break;
            case FaultKind.SensorCoresShorted:
                _loop.SetCoresShorted(core, other, applied);
                break;
            default:
                _loop.SetCoresSwapped(core, other, applied);
                break;
        }
    }

    private static (CableCore Core, CableCore Other) Named(string cores)
    {
        (CableCore Core, CableCore Other) named = default;
        string[] colours = cores.Split('+');
        foreach (CableCore core in Cores)
        {
            if (CoreColours.ColourOf(core) == colours[0])
                named.Core = core;
            if (CoreColours.ColourOf(core) == colours[^1])
                named.Other = core;
        }

        return named;
    }
}
