using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;

namespace LubeController.Plant;

/// <summary>The control supply: what it feeds follows its voltage.</summary>
public sealed partial class LubricationSystem
{
    private readonly ControlSupply _supply;

    /// <summary>Whether the control supply lets the controller's logic work, its hold-up time counted in.</summary>
    public bool ControlPowered => _supply.Powered;

    /// <summary>When the control supply's voltage next bends, or the logic on it starts or stops, us; <see cref="long.MaxValue"/> if never.</summary>
    public long NextSupplyUs => _supply.NextUs;

    /// <summary>Voltage of the control supply, V.</summary>
    public double ControlVoltageV => _supply.NowV;

    /// <summary>Voltage of the control supply without its ripple, as a filtered measurement shows it, V.</summary>
    public double ControlBaseVoltageV => _supply.BaseV;

    /// <summary>Whether somebody measures the voltage of the control supply, so that another one makes a difference by itself.</summary>
    public bool SupplyIsRead
    {
        get => _supply.IsRead;
        set => _supply.IsRead = value;
    }

    internal void FeedFromSupply()
    {
        _transmitter.SupplyPart = _supply.NowPart;
        foreach (CycleSwitch cycle in _switches)
        {
            cycle.Follow(NowUs);
            cycle.Sensed?.SetSupplyPart(_supply.NowPart);
        }
    }

    private bool SupplyIsShown()
    {
        if (Description.Transmitter is not null && _transmitter.IsOff(0))
            return true;
        if (!_supply.IsOff)
            return false;
        foreach (CycleSwitch cycle in _switches)
        {
            if (cycle.Sensed is not null && cycle.IsWrong)
                return true;
        }

        return false;
    }
}
