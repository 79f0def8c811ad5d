using System;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>The plant and whoever turns the knobs, on one virtual clock.</summary>
internal sealed class BenchWorld(Bench bench, IBenchDriver driver, long endUs, PinEvents pins, WiringRecorder? wiring)
{
    private readonly LubricationSystem _plant = bench.Plant;

    /// <summary>The present, us.</summary>
    public long NowUs => _plant.NowUs;

    /// <summary>End of the run, us.</summary>
    public long EndUs => endUs;

    /// <summary>The next time at which plant or driver change anything, us.</summary>
    public long NextUs => Math.Min(_plant.NextEventUs, driver.NextActionUs);

    /// <summary>Whether somebody has switched the board on, and its supply lets it work.</summary>
    public bool Powered => bench.Controls.Power && _plant.ControlPowered;

    /// <summary>Lets the driver act if something is due.</summary>
    public void Act()
    {
        if (driver.NextActionUs > NowUs)
            return;
        pins.BeforeAction();
        driver.Act(bench);
        pins.AfterAction();
        wiring?.Record(NowUs);
    }

    /// <summary>The driver looks at a scan.</summary>
    public void AfterScan() => driver.AfterScan(bench);

    /// <summary>Moves the plant while the board waits for its pins.</summary>
    public void AdvanceTo(long timeUs)
    {
        _plant.AdvanceTo(timeUs);
        pins.FollowSwitches();
    }

    /// <summary>Lets the world go on without the board, to the next action, change of the supply or limit.</summary>
    public void Pass(long limitUs)
    {
        _plant.AdvanceTo(Math.Min(Math.Min(driver.NextActionUs, _plant.NextSupplyUs), Math.Min(limitUs, endUs)));
        Act();
    }

    /// <summary>Lets the world go on without the board, up to a time or until power goes.</summary>
    public void PassTo(long untilUs)
    {
        Act();
        while (NowUs < Math.Min(untilUs, endUs) && Powered)
            Pass(untilUs);
    }
}
