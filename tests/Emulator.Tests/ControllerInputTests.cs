using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using LubeController.Core;
using Xunit;

namespace LubeController.Emulator.Tests;

/// <summary>The table of the controller's inputs against the core's input image.</summary>
public sealed class ControllerInputTests
{
    public static TheoryData<string> Names => [.. ControllerInputs.All.Select(input => input.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_input_reads_back_what_was_set_and_touches_no_other(string name)
    {
        ControllerInput input = ControllerInputs.All.Single(one => one.Name == name);
        foreach (int value in new[] { input.Most, input.Least })
        {
            var image = new Inputs();
            int[] before = Values(image);
            input.Set(image, value);
            before[input.Row] = value;
            Assert.Equal(before, Values(image));
        }
    }

    [Fact]
    public void Every_part_of_the_input_image_has_a_row()
    {
        string[] timing = [nameof(Inputs.ShaftPulseAgeMs), nameof(Inputs.PumpRevolutionAgeMs)];
        foreach (PropertyInfo property in typeof(Inputs).GetProperties().Where(property => property.SetMethod is { IsPublic: true } && !timing.Contains(property.Name)))
        {
            var image = new Inputs();
            int[] before = Values(image);
            property.SetValue(image, property.PropertyType == typeof(bool) ? !(bool)property.GetValue(image)! : (object)((int)property.GetValue(image)! + 1));
            Assert.True(1 == before.Zip(Values(image), (was, now) => was != now).Count(differs => differs), $"no row, or several, for {property.Name}");
        }

        Assert.Equal(Inputs.MaxCycleSwitches, ControllerInputs.CycleSwitches.Count);
        Assert.Equal(Enum.GetValues<Button>().Select(button => (Button?)button), ControllerInputs.Buttons.Select(input => input.Button));
    }

    [Fact]
    public void No_name_stands_twice() => Assert.Equal(ControllerInputs.All.Count, new HashSet<string>(ControllerInputs.All.Select(input => input.Name), StringComparer.Ordinal).Count);

    [Fact]
    public void A_value_is_written_as_scripts_write_it() =>
        Assert.Equal(
            ["on", "off", "3", "30000 mbar", "20.5 degC"],
            [
                ControllerInputs.Stop.Written(1), ControllerInputs.LevelLow.Written(0), ControllerInputs.ShaftPulses.Written(3), ControllerInputs.Pressure.Written(30_000),
                ControllerInputs.Temperature.Written(205),
            ]);

    [Fact]
    public void An_operated_input_has_no_sensor_to_be_given_back_to()
    {
        var controls = new BenchControls();
        Assert.Throws<ArgumentException>(() => controls.Set(ControllerInputs.Stop, null));
        controls.Set(ControllerInputs.LevelLow, 1);
        controls.Set(ControllerInputs.LevelLow, null);
        var image = new Inputs();
        controls.CopyTo(image);
        Assert.False(image.LevelLow);
    }

    private static int[] Values(Inputs image) => [.. ControllerInputs.All.Select(input => input.Get(image))];
}
