using LubeController.Core;
using Xunit;
using Buttons = LubeController.Analysis.Specification.Buttons;

namespace LubeController.Analysis.Tests.ControlRules;

/// <summary>
/// Where the core does not do what the control rules say, as of now. Each is listed in DEVELOPERS.md; a test that fails here says
/// that one of them is mended: move its sentence to <see cref="ControlRulesTests"/> and strike it from the list.
/// </summary>
public sealed class ControlRulesDifferencesTests
{
    private const int SaveIntervalMs = 2_000;

    /// <summary>The rules: cuts closer than one save interval are unexpected, whatever is set.</summary>
    [Fact]
    public void Cuts_closer_than_a_save_interval_are_expected_where_any_number_of_restarts_is()
    {
        HandheldCore core = Restarting(most: 0);
        CutSoon(core, cuts: 3);

        Assert.False(core.Stands(AlarmId.RestartUnexpected));
    }

    /// <summary>The rules: a failure once such cuts add up to overdue-limit.</summary>
    [Fact]
    public void Close_cuts_never_add_up_to_a_failure()
    {
        HandheldCore core = Restarting(most: 9);
        CutSoon(core, cuts: 12);

        Assert.Equal((byte)AlarmCategory.MaintenanceRequired, core.Alarm(AlarmId.RestartUnexpected).Category);
        Assert.True(core.Seen.HealthyRelay);
    }

    /// <summary>The rules: each power-up closer to the last than a save interval adds one save interval to the overdue clock.</summary>
    [Fact]
    public void Close_cuts_add_nothing_to_the_overdue_clock()
    {
        HandheldCore core = Restarting(most: 9);
        CutSoon(core, cuts: 12);

        Assert.False(core.Stands(AlarmId.LubricationOverdue));
    }

    /// <summary>The rules: restart-delay is at most half of save-interval. A core with refused settings is in failed.</summary>
    [Fact]
    public void A_restart_delay_beyond_half_of_a_save_interval_is_accepted()
    {
        HandheldCore core = new((SettingField.SaveIntervalMs, SaveIntervalMs), (SettingField.RestartDelayMs, SaveIntervalMs - 1));

        Assert.False(core.Stands(AlarmId.SettingsInvalid));
    }

    /// <summary>The rules: a switch that pulsed in a scan is not proved wrong by it.</summary>
    [Fact]
    public void A_switch_is_proved_wrong_by_a_pulse_of_another_in_the_scan_of_its_own()
    {
        HandheldCore core = new((SettingField.SwitchCount, 2), (SettingField.WitnessPulses, 3), (SettingField.ChatterChanges, 0), (SettingField.DoseEdges, 9));
        core.Press(Buttons.DoseNow);
        for (int pulse = 0; pulse < 3; pulse++)
        {
            core.Run(100);
            core.Switches(pulse < 2 ? 1 : 3);
            core.Run(100);
            core.Switches(0);
        }

        Assert.True(core.Stands(AlarmId.CycleSwitchFault));
    }

    private static HandheldCore Restarting(int most) => new(
        (SettingField.RestartsMost, most), (SettingField.SaveIntervalMs, SaveIntervalMs), (SettingField.RestartWindowMs, 600_000),
        (SettingField.RestMs, 10_000), (SettingField.OverdueMs, 20_000));

    private static void CutSoon(HandheldCore core, int cuts)
    {
        for (int cut = 0; cut < cuts; cut++)
        {
            core.Run(100);
            core.CutPower();
        }
    }
}
