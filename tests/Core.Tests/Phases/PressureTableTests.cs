using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Compares the steps of a dose by pressure and the outputs in PHASES.md with what the core does.</summary>
public sealed class PressureTableTests
{
    private static readonly MarkdownTable Steps = MarkdownTable.Read("step");
    private static readonly MarkdownTable OutputTable = MarkdownTable.Read("output");

    /// <summary>How to get to each place from a rest of a bench that doses by pressure.</summary>
    private static readonly Dictionary<string, Action<CoreBench>> Roads = new()
    {
        ["rest"] = _ => { },
        ["recharge"] = bench => bench.Pressure(12_000).Run(10).Press(Button.DoseNow),
        ["pressurise"] = bench => bench.Press(Button.DoseNow),
        ["hold"] = bench => bench.Press(Button.DoseNow).Pressure(12_000).Run(10),
        ["vent"] = bench => bench.Press(Button.DoseNow).Pressure(12_000).Run(TestSettings.HoldMs + 10),
        ["retry pause"] = bench => bench.Press(Button.DoseNow).RunUntil(Phase.RetryPause, 60_000),
        ["prime"] = bench => bench.Hold(Button.Prime),
        ["stopped"] = bench => { bench.Inputs.Stop = true; bench.Run(10); },
        ["failed"] = bench => bench.Empty(true),
        ["no power"] = bench => { bench.Hold(Button.Prime); bench.Core.PowerUp(); },
    };

    public static TheoryData<string> StepNames() => new(Steps.Rows.Select(row => row[0]));

    public static TheoryData<string, string, string> OutputCells()
    {
        var cells = new TheoryData<string, string, string>();
        foreach (IReadOnlyList<string> row in OutputTable.Rows)
        {
            for (int column = 1; column < OutputTable.Head.Count; column++)
                cells.Add(row[0], OutputTable.Head[column], row[column]);
        }

        return cells;
    }

    [Fact]
    public void The_page_lists_every_step_and_every_place_in_which_outputs_may_be()
    {
        Assert.Equal(Enum.GetNames<DoseStep>().Skip(1).Select(name => name.ToLowerInvariant()), Steps.Rows.Select(row => row[0]));
        Assert.Equal(Roads.Keys.Order(StringComparer.Ordinal), OutputTable.Head.Skip(1).Order(StringComparer.Ordinal));
        Assert.Equal(["pump", "vent valve, normally open", "vent valve, normally closed"], OutputTable.Rows.Select(row => row[0]));
    }

    [Theory]
    [MemberData(nameof(StepNames))]
    public void In_each_step_pump_and_vent_valve_are_as_the_page_says(string name)
    {
        IReadOnlyList<string> row = Steps.Rows.Single(one => one[0] == name);
        foreach (bool normallyOpen in new[] { true, false })
        {
            CoreBench bench = At(name, normallyOpen);
            Assert.Equal(name, bench.Core.DoseStep.ToString().ToLowerInvariant());
            Assert.Equal(row[1], bench.Outputs.Pump ? "on" : "off");
            Assert.Equal(row[2], bench.Outputs.VentValve == normallyOpen ? "closed" : "open");
        }
    }

    [Theory]
    [MemberData(nameof(StepNames))]
    public void Each_step_is_followed_by_the_one_the_page_names(string name)
    {
        IReadOnlyList<string> row = Steps.Rows.Single(one => one[0] == name);
        CoreBench bench = At(name, true);
        bench.ClearLog();
        bench.Pressure(bench.Outputs.Pump ? 12_000 : 0).RunUntil(() => bench.Steps.Any(), TestSettings.VentMs + 20);
        Assert.Contains(bench.Steps.Single().Split(' ')[1], row[4], StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(OutputCells))]
    public void The_outputs_are_as_the_page_says(string output, string place, string cell)
    {
        CoreBench bench = At(place, output != "vent valve, normally closed");
        Assert.Equal(cell == "on", output == "pump" ? bench.Outputs.Pump : bench.Outputs.VentValve);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void In_the_other_dose_modes_the_output_of_the_vent_valve_is_off(bool normallyOpen)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.VentValveNormallyOpen] = normallyOpen ? 1 : 0).ToRest();
        Assert.False(bench.Outputs.VentValve);
        bench.Run(6_000).Press(Button.DoseNow);
        Assert.True(bench.Outputs.Pump);
        Assert.False(bench.Outputs.VentValve);
    }

    private static CoreBench At(string place, bool normallyOpen)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureCycles] = 2;
            settings[SettingField.VentValveNormallyOpen] = normallyOpen ? 1 : 0;
            settings[SettingField.SwitchCount] = 1;
            settings[SettingField.FirstPulseAllowanceMs] = 0;
            settings.SetTimeout(0, 7_000);
            settings.SetRetries(0, 1);
        }).ToRest();
        Roads[place](bench);
        return bench;
    }
}
