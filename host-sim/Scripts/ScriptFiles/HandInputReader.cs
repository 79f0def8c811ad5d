using System;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads what an input that is held by hand is set to.</summary>
internal static class HandInputReader
{
    private const string GivenBack = "sensor";
    private const int MostPulses = 1_000_000;

    /// <summary>The action, or null where a problem was added.</summary>
    public static HoldInput? Read(MapReader step, HandInput input)
    {
        if (step.Single("to") is not { } node)
            return null;
        if (node.Text == GivenBack)
            return new HoldInput(input, null, GivenBack);
        (UnitFamily? family, string unit, double scale, double most) = input switch
        {
            HandInput.Pressure => (UnitFamily.Pressure, "mbar", 1.0, 1e6),
            HandInput.Supply => (UnitFamily.Voltage, "mV", 1.0, 60_000),
            HandInput.Temperature => (UnitFamily.Temperature, "degC", 10.0, 5_000),
            HandInput.ShaftPulses or HandInput.PumpRevolutions => (UnitFamily.Count, "1", 1.0, MostPulses),
            _ => ((UnitFamily?)null, "", 1.0, 1),
        };
        if (family == null)
        {
            if (node.Text is "on" or "off")
                return new HoldInput(input, node.Text == "on" ? 1 : 0, node.Text);
            step.Problems.Add(node, "neither 'on' nor 'off'", "write 'on' or 'off', or 'sensor' to give it back");
            return null;
        }

        if (!QuantityReader.TryRead(node.Text, family, out Quantity quantity, out string message, out string remedy))
        {
            step.Problems.Add(node, message, remedy + ", or 'sensor' to give it back");
            return null;
        }

        double value = Math.Round(family.FromSi(quantity.Si, unit) * scale, MidpointRounding.AwayFromZero);
        double least = input is HandInput.Pressure ? -most : input is HandInput.Temperature ? -2_000 : 0;
        if (value >= least && value <= most)
            return new HoldInput(input, (int)value, node.Text);
        step.Problems.Add(node, $"{family.Name} outside what the controller can be shown", $"write for instance {family.Example}");
        return null;
    }
}
