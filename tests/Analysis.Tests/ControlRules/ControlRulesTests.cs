using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Lockstep;
using LubeController.Core;
using Xunit;
using Buttons = LubeController.Analysis.Specification.Buttons;

namespace LubeController.Analysis.Tests.ControlRules;

/// <summary>
/// Restarts, lamp, output test, chatter and doses by pressure, read once more from the control rules alone, sentence by sentence,
/// and asked of the deployed core without the specification between. What the rules leave open is asked nowhere here.
/// </summary>
public sealed class ControlRulesTests
{
    private const int SaveIntervalMs = 2_000;
    private const int ReachedMbar = 10_000;

    private static readonly (int Field, int Value)[] ByPressure =
    [
        (SettingField.DoseMode, (int)DoseMode.Pressure), (SettingField.SwitchCount, 0), (SettingField.PressureTransmitterFitted, 1),
        (SettingField.PressureReachedMbar, ReachedMbar), (SettingField.PressureMissingMs, 3_000), (SettingField.HoldMs, 500),
        (SettingField.VentMs, 1_000), (SettingField.VentLimitMs, 4_000),
    ];

    [Theory]
    [InlineData(2, 2, false)]
    [InlineData(2, 3, true)]
    [InlineData(0, 9, false)]
    public void More_restarts_than_set_are_unexpected_and_0_expects_any_number(int most, int cuts, bool unexpected)
    {
        HandheldCore core = Restarting(most);
        for (int cut = 0; cut < cuts; cut++)
        {
            core.Run(SaveIntervalMs + 10);
            core.CutPower();
        }

        Assert.Equal(unexpected, core.Stands(AlarmId.RestartUnexpected));
    }

    [Fact]
    public void A_cut_closer_than_a_save_interval_is_unexpected_and_latches()
    {
        HandheldCore core = Restarting(most: 9);
        core.Run(SaveIntervalMs / 2);
        core.CutPower();

        Assert.True(core.Alarm(AlarmId.RestartUnexpected) is { Latched: true, Category: (byte)AlarmCategory.MaintenanceRequired });
        Assert.NotEqual(Phase.Failed, core.Phase);
    }

    [Theory]
    [InlineData(Phase.Rest)]
    [InlineData(Phase.Dose)]
    [InlineData(Phase.Failed)]
    public void An_output_test_is_refused_outside_of_stopped(Phase phase)
    {
        HandheldCore core = Testing();
        if (phase == Phase.Dose)
            core.Press(Buttons.DoseNow);
        if (phase == Phase.Failed)
        {
            core.Inputs = core.Inputs with { PressureMbar = 300_000 };
            core.Scan();
        }

        Assert.Equal(phase, core.Phase);
        Assert.True(core.IsRefused(Buttons.OutputTest));
        Assert.Equal(phase, core.Phase);
    }

    [Fact]
    public void An_output_test_moves_relay_warning_output_and_lamp_and_never_the_pump_for_a_limited_time()
    {
        HandheldCore core = Testing().Stopped();
        Assert.False(core.IsRefused(Buttons.OutputTest));
        var seen = new HashSet<(string, bool)>();
        int scans = 0;
        for (; core.Phase == Phase.OutputTest; scans++)
        {
            Assert.False(core.Seen.Pump);
            seen.UnionWith([("relay", core.Seen.HealthyRelay), ("warning", core.Seen.Warning), ("lamp", core.Seen.Lamp)]);
            core.Scan();
            Assert.InRange(scans, 0, 110);
        }

        Assert.Equal(6, seen.Count);
        Assert.Equal(Phase.Stopped, core.Phase);
    }

    [Fact]
    public void An_output_test_refuses_start_dose_now_and_prime_and_is_left_alone_by_its_own_button_and_reset()
    {
        HandheldCore core = Testing().Stopped();
        core.Press(Buttons.OutputTest);

        Assert.True(core.IsRefused(Buttons.Start) && core.IsRefused(Buttons.DoseNow) && core.IsRefused(Buttons.Prime));
        Assert.False(core.IsRefused(Buttons.OutputTest) || core.IsRefused(Buttons.Reset));
        Assert.Equal(Phase.OutputTest, core.Phase);
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("a failure that stops no pump")]
    [InlineData("an interlock")]
    [InlineData("a power cut")]
    public void An_output_test_ends_at_once_in_stopped(string what)
    {
        HandheldCore core = Testing().Stopped();
        core.Press(Buttons.OutputTest);
        Assert.Equal(Phase.OutputTest, core.Phase);
        core.Inputs = what switch
        {
            "stop" => core.Inputs with { Stop = true },
            "a failure that stops no pump" => core.Inputs with { ScanLate = true },
            "an interlock" => core.Inputs with { PressureMbar = 300_000 },
            _ => core.Inputs,
        };
        if (what == "a power cut")
            core.CutPower();
        else
            core.Scan();

        Assert.Equal(Phase.Stopped, core.Phase);
    }

    [Fact]
    public void An_output_test_is_refused_while_any_failure_stands()
    {
        HandheldCore core = Testing().Stopped();
        core.Inputs = core.Inputs with { ScanLate = true };
        core.Scan();
        core.Inputs = core.Inputs with { ScanLate = false };
        core.Scan();

        Assert.Equal(Phase.Stopped, core.Phase);
        Assert.True(core.Stands(AlarmId.ScanOverrun) && core.IsRefused(Buttons.OutputTest));
    }

    [Theory]
    [InlineData(0, AlarmAction.DoseEnding, AlarmCategory.Failure)]
    [InlineData(1, AlarmAction.None, AlarmCategory.OutOfSpecification)]
    public void A_switch_that_chatters_is_at_fault_and_ends_the_dose_if_it_is_the_dose_ending_one(int cycleSwitch, AlarmAction acts, AlarmCategory category)
    {
        HandheldCore core = Chattering();
        core.Press(Buttons.DoseNow);
        Chatter(core, cycleSwitch, changes: 8);

        AlarmObservation alarm = core.Alarm(AlarmId.CycleSwitchFault);
        Assert.True(alarm.Latched);
        Assert.Equal(((byte)acts, (byte)category), (alarm.Action, alarm.Category));
        Assert.Equal(acts == AlarmAction.DoseEnding ? Phase.Failed : Phase.Dose, core.Phase);
        core.Run(2_000);
        core.Press(Buttons.Reset);
        Assert.False(core.Stands(AlarmId.CycleSwitchFault));
    }

    [Fact]
    public void A_switch_that_rests_at_a_level_does_not_chatter()
    {
        HandheldCore core = Chattering();
        for (int change = 0; change < 8; change++)
        {
            Chatter(core, 0, changes: 1);
            core.Run(1_500);
        }

        Assert.False(core.Stands(AlarmId.CycleSwitchFault));
    }

    [Fact]
    public void A_dose_by_pressure_is_complete_after_pressure_is_reached_held_and_vented()
    {
        HandheldCore core = new(ByPressure);
        core.Run(2_000);
        core.Press(Buttons.DoseNow);
        core.Run(1_500);
        Assert.True(core.Seen.Pump);
        core.Pressure(ReachedMbar);
        core.Run(400);
        Assert.True(core.Seen.Pump);
        core.Run(200);
        Assert.False(core.Seen.Pump);
        Assert.Equal((Phase.Dose, 0), (core.Phase, core.Seen.DosesCompleted));
        core.Pressure(0);
        core.Run(1_200);

        Assert.Equal((Phase.Rest, 1), (core.Phase, core.Seen.DosesCompleted));
    }

    [Fact]
    public void Pressure_that_is_not_held_completes_no_dose()
    {
        HandheldCore core = new(ByPressure);
        core.Run(2_000);
        core.Press(Buttons.DoseNow);
        core.Run(1_500);
        core.Pressure(ReachedMbar);
        core.Run(300);
        core.Pressure(0);
        core.Run(1_500);

        Assert.Equal((Phase.Dose, 0), (core.Phase, core.Seen.DosesCompleted));
    }

    [Theory]
    [InlineData(false, AlarmId.LinePressureMissing)]
    [InlineData(true, AlarmId.LineNotVented)]
    public void Pressure_missing_or_not_vented_in_its_time_ends_the_dose(bool reached, AlarmId expected)
    {
        HandheldCore core = new(ByPressure);
        core.Run(2_000);
        core.Press(Buttons.DoseNow);
        core.Run(1_500);
        if (reached)
            core.Pressure(ReachedMbar);
        core.Run(5_500);

        Assert.Equal(Phase.Failed, core.Phase);
        Assert.True(core.Alarm(expected) is { Latched: true, Action: (byte)AlarmAction.DoseEnding, Category: (byte)AlarmCategory.Failure });
        Assert.False(core.Seen.HealthyRelay);
        core.Pressure(0);
        core.Press(Buttons.Reset);
        Assert.False(core.Stands(expected));
    }

    [Fact]
    public void Pressure_above_its_limit_is_an_interlock()
    {
        HandheldCore core = new(ByPressure);
        core.Run(2_000);
        core.Press(Buttons.DoseNow);
        core.Run(1_500);
        core.Pressure(300_000);
        core.Scan();

        Assert.True(core.Alarm(AlarmId.LineOverpressure) is { Latched: true, Action: (byte)AlarmAction.Interlock });
        Assert.Equal((Phase.Failed, false), (core.Phase, core.Seen.Pump));
    }

    private static HandheldCore Restarting(int most) => new(
        (SettingField.RestartsMost, most), (SettingField.SaveIntervalMs, SaveIntervalMs), (SettingField.RestartWindowMs, 600_000));

    private static HandheldCore Testing() => new((SettingField.OutputTestMs, 1_000), (SettingField.PressureTransmitterFitted, 1));

    private static HandheldCore Chattering() => new(
        (SettingField.SwitchCount, 2), (SettingField.ChatterChanges, 6), (SettingField.ChatterWindowMs, 500), (SettingField.WitnessPulses, 0));

    private static void Chatter(HandheldCore core, int cycleSwitch, int changes)
    {
        foreach (int _ in Enumerable.Range(0, changes))
        {
            core.Switches(core.Inputs.CycleSwitches ^ (1 << cycleSwitch));
            core.Scan();
        }
    }
}
