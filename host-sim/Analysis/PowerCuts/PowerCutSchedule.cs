using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>Runs that come by every kind of write.</summary>
public static class PowerCutSchedule
{
    private const long Minute = 60_000;
    private const long Hour = 60 * Minute;

    /// <summary>A run of some hours, in each of which the reservoir runs low, a press is refused, somebody stops, starts, shelves and stores settings, the divider is blocked, the loop faults and the power goes.</summary>
    /// <param name="hours">1 or more.</param>
    /// <param name="refusals">Presses that are refused in an hour, to fill the logbook.</param>
    public static IReadOnlyList<PowerCutStep> Hours(int hours, int refusals)
    {
        var steps = new List<PowerCutStep>();
        for (int hour = 0; hour < hours; hour++)
            AddHour(steps, hour * Hour, hour + 1, refusals);
        return steps;
    }

    /// <summary>Length of such a run, milliseconds.</summary>
    public static long LengthMs(int hours) => hours * Hour;

    private static void AddHour(List<PowerCutStep> steps, long from, int number, int refusals)
    {
        void Add(double minute, PowerCutDeed deed, int value = 0) => steps.Add(new PowerCutStep(from + (long)(minute * Minute), deed, value));

        Add(3, PowerCutDeed.LevelLow, 1);
        Add(4, PowerCutDeed.Press, (int)Button.Acknowledge);
        Add(5, PowerCutDeed.LevelLow, 0);
        Add(6, PowerCutDeed.Store, number);
        Add(8, PowerCutDeed.Shelve, (int)AlarmId.ReservoirLow);
        Add(10, PowerCutDeed.Fault);
        Add(12, PowerCutDeed.Press, (int)Button.Acknowledge);
        Add(13, PowerCutDeed.Press, (int)Button.Reset);
        Add(18, PowerCutDeed.PowerOff);
        Add(20.3, PowerCutDeed.PowerOff);
        Add(22, PowerCutDeed.LevelEmpty, 1);
        Add(23, PowerCutDeed.Press, (int)Button.Acknowledge);
        Add(24, PowerCutDeed.PowerOff);
        Add(25, PowerCutDeed.LevelEmpty, 0);
        Add(26, PowerCutDeed.Press, (int)Button.Reset);
        Add(28, PowerCutDeed.Blocked, 1);
        Add(28.1, PowerCutDeed.Press, (int)Button.DoseNow);
        Add(40, PowerCutDeed.Blocked, 0);
        Add(41, PowerCutDeed.Press, (int)Button.Acknowledge);
        Add(42, PowerCutDeed.Press, (int)Button.Reset);
        Add(46, PowerCutDeed.Stop, 1);
        Add(46.5, PowerCutDeed.Stop, 0);
        for (int press = 0; press < refusals; press++)
            Add(47 + (press / 120.0), PowerCutDeed.Press, (int)Button.DoseNow);
        Add(58, PowerCutDeed.Press, (int)Button.Start);
        Add(58.6, PowerCutDeed.PowerOff);
    }
}
