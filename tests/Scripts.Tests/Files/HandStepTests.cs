using System;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Files.Reading;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Files;

/// <summary>Steps by which inputs are held by hand, and alarms hidden.</summary>
public sealed class HandStepTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 1 h\nsteps:\n";

    [Fact]
    public void They_are_read()
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("hand.yaml", Head + """
              - {at: 1 s, set: cycle-switch-1, to: on}
              - {at: 2 s, set: pressure, to: 30 bar}
              - {at: 3 s, set: temperature, to: -20 degC}
              - {at: 4 s, set: supply, to: 15 V}
              - {at: 5 s, set: shaft-pulses, to: 3}
              - {at: 6 s, set: cycle-switch-1, to: sensor}
              - {at: 7 s, shelve: reservoir-low, for: 2 min}
              - {at: 8 s, unshelve: reservoir-low}
              - {at: 9 s, out-of-service: supply-low}
              - {at: 10 s, in-service: supply-low}
              - {at: 11 s, press: output-test}
            """));
        Assert.Equal(
            [
                new SetInput(ControllerInputs.CycleSwitches[0], 1, "on"), new SetInput(ControllerInputs.Pressure, 30_000, "30 bar"), new SetInput(ControllerInputs.Temperature, -200, "-20 degC"),
                new SetInput(ControllerInputs.Supply, 15_000, "15 V"), new SetInput(ControllerInputs.ShaftPulses, 3, "3"), new SetInput(ControllerInputs.CycleSwitches[0], null, "sensor"),
                new HideAlarm(AlarmDeed.Shelve, AlarmId.ReservoirLow, 120_000_000), new HideAlarm(AlarmDeed.Unshelve, AlarmId.ReservoirLow, 0),
                new HideAlarm(AlarmDeed.TakeOutOfService, AlarmId.SupplyLow, 0), new HideAlarm(AlarmDeed.PutIntoService, AlarmId.SupplyLow, 0),
                new PressButton(Button.OutputTest, 500_000),
            ],
            script.Steps.Select(step => step.Action));
        Assert.Equal("shelve reservoir-low for 2 min", script.Steps[6].Action.Text);
    }

    [Theory]
    [InlineData("set: cycle-switch-1, to: 3", "'sensor' to give it back")]
    [InlineData("set: pressure, to: on", "'sensor' to give it back")]
    [InlineData("set: supply, to: 90 V", "outside what the controller can be shown")]
    [InlineData("set: moon, to: on", "cycle-switch-1")]
    [InlineData("shelve: reservoir-low", "for: 30 min")]
    [InlineData("shelve: reservoir-loo, for: 1 min", "reservoir-low")]
    [InlineData("unshelve: reservoir-low, for: 1 min", "'for' does not go with 'unshelve'")]
    public void A_bad_one_is_refused_with_place_and_remedy(string step, string told)
    {
        using var folder = new TempFolder();
        string path = folder.Write("bad.yaml", Head + "  - {at: 1 s, " + step + "}\n");
        var problems = new ProblemList();
        Assert.Null(new ScriptReader(new EmulatedBench(), RestRules.All).Read(path, problems));
        Assert.Contains("bad.yaml:6:", problems.All[0].ToString(), StringComparison.Ordinal);
        Assert.Contains(told, string.Join('\n', problems.All), StringComparison.Ordinal);
    }
}
