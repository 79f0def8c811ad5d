using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Core;

namespace LubeController.Tests.Draws;

/// <summary>Named generators that more than one room's tests draw from, composed from small to large.</summary>
public static class Generators
{
    /// <summary>One of some values, each as likely; written twice, twice as likely.</summary>
    public static Gen<T> Among<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    /// <summary>A value half of the time, otherwise 0, which turns most settings off.</summary>
    public static Gen<int> Sometimes(Gen<int> value) => Gen.Bool.SelectMany(on => on ? value : Gen.Const(0));

    /// <summary>A value one time in six, otherwise 0.</summary>
    public static Gen<int> Seldom(int value) => Gen.Frequency((5, Gen.Const(0)), (1, Gen.Const(value)));

    /// <summary>
    /// Every setting of the controller within its bounds, each run drawing its whole configuration, some sensors and alarms off
    /// altogether. The checks may refuse a combination: <see cref="FitDosesByPressure"/> and the caller set right what it needs.
    /// </summary>
    /// <param name="brief">For runs of a few hundred scans, so that times end within them; otherwise for some thousand.</param>
    public static Gen<int[]> Settings(bool brief)
    {
        var bounds = new SettingBounds(brief);
        Gen<int[]> values = Gen.Const(System.Array.Empty<int>());
        foreach (Gen<int> field in Enumerable.Range(0, SettingField.Count).Select(bounds.Of))
            values = values.SelectMany(so => field.Select(value => (int[])[.. so, value]));
        return values;
    }

    /// <summary>What may be done to a plant, in the order of time: see <see cref="PlantCommand"/>.</summary>
    /// <param name="endUs">Latest time of a command, us.</param>
    /// <param name="most">Most commands.</param>
    public static Gen<PlantCommand[]> PlantCommands(long endUs, int most) =>
        Gen.Select(Gen.Long[0, endUs], Gen.Int[0, PlantCommand.Kinds - 1], Gen.Int[0, 9999], Gen.Double[0, 1])
            .Select((atUs, what, which, howMuch) => new PlantCommand(atUs, what, which, howMuch))
            .Array[0, most].Select(commands => commands.OrderBy(command => command.AtUs).ToArray());

    /// <summary>Sets right what the checks would refuse of doses by pressure: the sensor, its time, and a limit that leaves room for the cycles.</summary>
    /// <param name="values">Settings by field; doses by pressure are chosen in them.</param>
    /// <param name="leastMissingMs">Shortest time within which pressure must come.</param>
    public static void FitDosesByPressure(IList<int> values, int leastMissingMs)
    {
        if (values[SettingField.PressureTransmitterFitted] == 0)
            values[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
        values[SettingField.PressureMissingMs] = System.Math.Max(leastMissingMs, values[SettingField.PressureMissingMs]);
        int longest = values[SettingField.PressureCycles] * (values[SettingField.PressureMissingMs] + values[SettingField.HoldMs]);
        values[SettingField.DoseLimitMs] = System.Math.Max(longest + 1, values[SettingField.DoseLimitMs]);
    }
}
