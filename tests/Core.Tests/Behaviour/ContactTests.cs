using Xunit;

namespace LubeController.Core.Tests;

/// <summary>After power-up a contact has shown nothing until its debounce is over: its alarm stays as it stood.</summary>
public sealed class ContactTests
{
    [Theory]
    [InlineData(AlarmId.PumpOverload)]
    [InlineData(AlarmId.LineOverpressure)]
    public void A_cut_neither_ends_nor_raises_again_what_a_contact_still_shows(AlarmId id)
    {
        CoreBench bench = Closed(id);
        bench.Press(Button.Acknowledge).ClearLog();
        bench.CutPower().Run(1_000);
        Assert.Empty(bench.AlarmLines);
        Assert.Equal(AlarmState.Acknowledged, bench.Core.Alarms.StateOf(id));
    }

    [Theory]
    [InlineData(AlarmId.PumpOverload)]
    [InlineData(AlarmId.LineOverpressure)]
    public void A_reset_before_the_contact_has_shown_anything_clears_no_latch(AlarmId id)
    {
        CoreBench bench = Closed(id);
        bench.CutPower().Run(60).Press(Button.Reset);
        Assert.True(bench.Core.Alarms.IsLatched(id));
        Assert.Equal(Phase.Failed, bench.Phase);
    }

    [Theory]
    [InlineData(AlarmId.PumpOverload)]
    [InlineData(AlarmId.LineOverpressure)]
    public void A_contact_found_open_after_a_cut_ends_its_condition_once_it_is_debounced(AlarmId id)
    {
        CoreBench bench = Closed(id);
        Set(bench, id, false);
        bench.ClearLog();
        bench.CutPower().Run(180);
        Assert.True(bench.Core.Alarms.IsActive(id));
        bench.Run(1_000);
        Assert.False(bench.Core.Alarms.IsActive(id));
        bench.Press(Button.Reset);
        Assert.Equal("", bench.Standing());
    }

    /// <summary>Both contacts with a debounce longer than that of a press.</summary>
    private static CoreBench Closed(AlarmId id)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.OverloadFitted] = 1;
            settings[SettingField.OverloadDebounceMs] = 200;
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Limit;
            settings[SettingField.PressureDebounceMs] = 200;
            settings[SettingField.DelayOff(id)] = 0;
        }).ToRest();
        Set(bench, id, true);
        bench.Run(1_000);
        Assert.True(bench.Core.Alarms.IsActive(id));
        return bench;
    }

    private static void Set(CoreBench bench, AlarmId id, bool closed)
    {
        if (id == AlarmId.PumpOverload)
            bench.Inputs.PumpOverload = closed;
        else
            bench.Inputs.PressureSwitch = closed;
    }
}
