using CsCheck;
using LubeController.Tests.Draws;

namespace LubeController.Core.Tests;

/// <summary>
/// Generators of random runs, from small to large. Each run draws its whole configuration.
/// </summary>
internal static class Scenarios
{
    private static readonly Gen<Step> Step =
        from deed in Gen.Frequency(
            (6, Gen.Const(Deed.Wait)),
            (6, Gen.Const(Deed.ToggleSwitch)),
            (3, Gen.Int[(int)Deed.Start, (int)Deed.Prime].Select(deed => (Deed)deed)),
            (3, Gen.Const(Deed.Reset)),
            (2, Gen.Const(Deed.OutputTest)),
            (6, Gen.Int[(int)Deed.Stop, (int)Deed.CutPower].Select(deed => (Deed)deed)))
        from argument in Gen.Int[0, 11]
        from ticks in Gen.Frequency((6, Gen.Int[1, 12]), (4, Gen.Int[13, 150]), (1, Gen.Int[151, 900]))
        select new Step(deed, argument, ticks);

    /// <summary>A run of some seconds to minutes.</summary>
    public static readonly Gen<Scenario> Any =
        from settings in Generators.Settings(brief: false)
        from strokes in Gen.Int[7, 60].Array[Inputs.MaxCycleSwitches]
        from steps in Step.Array[5, 50]
        select new Scenario(Repaired(settings), strokes, steps);

    /// <summary>Runs of single-line systems with a transmitter alone, whose readings a test can judge by itself.</summary>
    public static readonly Gen<Scenario> ByTransmitter = Any.Select(drawn =>
    {
        int[] settings = (int[])drawn.Settings.Clone();
        settings[SettingField.DoseMode] = (int)DoseMode.Pressure;
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureSwitchUse] = 0;
        return drawn with { Settings = Repaired(settings) };
    });

    /// <summary>Sets right what the settings would be refused for, so that no draw is wasted.</summary>
    private static int[] Repaired(int[] values)
    {
        if (values[SettingField.DoseMode] == (int)DoseMode.Cycles)
        {
            values[SettingField.SwitchCount] = System.Math.Max(1, values[SettingField.SwitchCount]);
            values[SettingField.DoseEndingSwitch] = System.Math.Min(values[SettingField.DoseEndingSwitch], values[SettingField.SwitchCount]);
        }

        if (values[SettingField.DoseMode] == (int)DoseMode.Pressure)
            Generators.FitDosesByPressure(values, leastMissingMs: 500);
        if (values[SettingField.RestMode] is (int)RestMode.Shaft or (int)RestMode.Either)
            values[SettingField.ShaftFitted] = 1;
        if (values[SettingField.PressureTransmitterFitted] == 0 && values[SettingField.PressureSwitchUse] != (int)PressureSwitchUse.Reached)
            values[SettingField.PressureMissingMs] = values[SettingField.PulsesShowPressure] = 0;
        return values;
    }
}
