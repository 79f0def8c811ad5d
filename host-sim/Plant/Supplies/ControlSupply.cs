using System;

namespace LubeController.Plant.Supplies;

/// <summary>
/// The supply of controller and cycle switches: its voltage, and whether the controller's logic works on it. What the logic
/// has stored carries it over drop-outs shorter than its hold-up time.
/// </summary>
internal sealed class ControlSupply
{
    private const double UsPerS = 1e6;

    private readonly SupplyDescription _description;
    private readonly Supply _supply;
    private double _part = 1;
    private long _outAtUs = long.MaxValue;

    internal ControlSupply(SupplyDescription description)
    {
        _description = description;
        _supply = new Supply(description);
    }

    /// <summary>Whether the controller's logic works.</summary>
    internal bool Powered { get; private set; } = true;

    /// <summary>Voltage now, V.</summary>
    internal double NowV => _supply.NowV;

    /// <summary>Voltage now without its ripple, V.</summary>
    internal double BaseV => _supply.BaseV;

    /// <summary>Voltage now, as a part of the nominal one.</summary>
    internal double NowPart => _supply.NowV / _description.NominalV;

    /// <summary>Whether somebody measures the voltage, so that another one makes a difference by itself.</summary>
    internal bool IsRead { get; set; }

    /// <summary>Whether the voltage without its ripple is other than the nominal one.</summary>
    internal bool BaseIsOff => _supply.BaseV != _description.NominalV;

    /// <summary>Whether the voltage is other than the nominal one.</summary>
    internal bool IsOff => _supply.NowV != _description.NominalV;

    /// <summary>When the voltage bends or the logic starts or stops, us; <see cref="long.MaxValue"/> for never.</summary>
    internal long NextUs => Math.Min(Math.Min(_supply.NextEventUs, _supply.NextCornerUs), _outAtUs);

    internal void AdvanceTo(long timeUs)
    {
        _supply.AdvanceTo(timeUs);
        Judge();
    }

    /// <summary>Goes to a part of the nominal voltage.</summary>
    internal void SetPart(double part)
    {
        _part = part;
        _supply.RampTo(Math.Min(60, _part * _description.NominalV), 0);
        Judge();
    }

    /// <summary>Lays a ripple on the voltage; a peak-to-peak of 0 takes it off.</summary>
    internal void SetRipple(double peakToPeakV, double periodS)
    {
        long quarterUs = Math.Max(1, (long)(periodS * UsPerS / 4));
        _supply.SetRipple(peakToPeakV, 4 * quarterUs);
        Judge();
    }

    private void Judge()
    {
        if (_supply.Powered)
        {
            Powered = true;
            _outAtUs = long.MaxValue;
        }
        else if (Powered)
        {
            if (_outAtUs == long.MaxValue)
                _outAtUs = _supply.NowUs + _description.HoldUpUs;
            if (_supply.NowUs < _outAtUs)
                return;
            Powered = false;
            _outAtUs = long.MaxValue;
        }
    }
}
