using System;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads what an input of the controller is set to.</summary>
internal static class InputReader
{
    private const string GivenBack = "sensor";

    /// <summary>The action, or null where a problem was added.</summary>
    public static SetInput? Read(MapReader step, ControllerInput input)
    {
        if (input.IsOperated)
            return step.Either("to", "on", "off") is { } operated ? new SetInput(input, operated ? 1 : 0, operated ? "on" : "off") : null;
        if (step.Single("to") is not { } node)
            return null;
        if (node.Text == GivenBack)
            return new SetInput(input, null, GivenBack);
        if (input.Kind == InputKind.Level)
        {
            if (node.Text is "on" or "off")
                return new SetInput(input, node.Text == "on" ? 1 : 0, node.Text);
            step.Problems.Add(node, "neither 'on' nor 'off'", "write 'on' or 'off', or 'sensor' to give it back");
            return null;
        }

        UnitFamily family = UnitFamily.OfSi(input.SiUnit);
        if (!QuantityReader.TryRead(node.Text, family, out Quantity quantity, out string message, out string remedy))
        {
            step.Problems.Add(node, message, remedy + ", or 'sensor' to give it back");
            return null;
        }

        double value = Math.Round(family.FromSi(quantity.Si, input.Unit) * input.PerUnit, MidpointRounding.AwayFromZero);
        if (value >= input.Least && value <= input.Most)
            return new SetInput(input, (int)value, node.Text);
        step.Problems.Add(node, $"{family.Name} outside what the controller can be shown", $"write for instance {family.Example}");
        return null;
    }
}
