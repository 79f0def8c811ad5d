using System;
using System.Linq;
using LubeController.Core;
using NSubstitute;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>The loop that is deployed: what it calls, in which order, and what a fault does.</summary>
public sealed class MainLoopTests
{
    private readonly BoardBench _bench = new();

    [Fact]
    public void A_turn_reads_scans_writes_and_kicks_the_watchdog_last()
    {
        MainLoop loop = _bench.Start();
        Assert.True(loop.RunOnce());
        Assert.Equal(["read", "write healthy", "kick"], _bench.Calls);
    }

    [Fact]
    public void A_turn_that_saves_does_so_after_the_outputs_and_before_the_kick()
    {
        MainLoop loop = _bench.Start();
        _bench.OnRead = inputs => inputs.Stop = true;
        Assert.True(loop.RunOnce());
        Assert.Equal(["read", "write healthy", "save", "kick"], _bench.Calls);
    }

    [Fact]
    public void The_loop_runs_until_the_board_says_that_power_is_going()
    {
        MainLoop loop = _bench.Start();
        int turns = 0;
        _bench.OnWait = _ => ++turns < 3;
        loop.Run();
        Assert.Equal(["read", "write healthy", "kick", "wait", "read", "write healthy", "kick", "wait", "read", "write healthy", "kick", "wait"], _bench.Calls);
        Assert.Equal(0, loop.Faults);
        _bench.Board.Received(3).WaitForNextScan(loop.Core, Arg.Any<int>());
    }

    [Fact]
    public void The_core_is_given_the_boards_clock_and_inputs()
    {
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        _bench.NowMs += 10_000;
        loop.RunOnce();
        Assert.Equal(Phase.Dose, loop.Core.Phase);
        Assert.Contains("write pump", _bench.Calls);
    }

    [Theory]
    [InlineData("inputs")]
    [InlineData("outputs")]
    [InlineData("storage")]
    [InlineData("wait")]
    public void An_exception_makes_the_outputs_safe_withholds_the_kick_and_restarts(string where)
    {
        MainLoop loop = ToDose();
        bool thrown = false;
        void Throw(string place)
        {
            if (place != where || thrown)
                return;
            thrown = true;
            throw new InvalidOperationException("invented");
        }

        _bench.OnRead = inputs =>
        {
            Throw("inputs");
            inputs.LevelLow = true;
            inputs.Stop = where == "storage";
        };
        _bench.OnWrite = () => Throw("outputs");
        _bench.StorageWorks = () =>
        {
            Throw("storage");
            return true;
        };
        _bench.OnWait = _ =>
        {
            Throw("wait");
            return true;
        };
        loop.Run();
        Assert.True(thrown);
        Assert.Equal("restart", _bench.Calls[^1]);
        Assert.Equal("write safe", _bench.Calls[^2]);
        Assert.Equal(where == "wait" ? 1 : 0, _bench.Calls.Count(call => call == "kick"));
        Assert.Equal(1, loop.Faults);
    }

    [Fact]
    public void Outputs_that_cannot_even_be_made_safe_do_not_keep_the_board_from_restarting()
    {
        MainLoop loop = ToDose();
        _bench.OnWrite = () => throw new InvalidOperationException("invented");
        Assert.False(loop.RunOnce());
        Assert.Equal(["read", "write pump", "write safe", "restart"], _bench.Calls);
        _bench.Board.Received(1).Restart();
    }

    [Fact]
    public void A_rule_that_throws_is_no_fault_of_the_loop()
    {
        IRestRule rule = Substitute.For<IRestRule>();
        rule.When(own => own.Begin()).Do(_ => throw new InvalidOperationException("invented"));
        _bench.Settings[SettingField.RestMode] = (int)RestMode.Rule;
        _bench.Settings[SettingField.RestFallbackMs] = 60_000;
        _bench.Settings[SettingField.OverdueMs] = 100_000_000;
        MainLoop loop = _bench.Start(rule);
        Assert.True(loop.RunOnce());
        Assert.True(loop.Core.Alarms.Stands(AlarmId.RuleFault));
        Assert.Equal(0, loop.Faults);
    }

    [Fact]
    public void A_change_of_phase_is_saved_at_once()
    {
        MainLoop loop = ToDose();
        Assert.Equal(0, Saves());
        _bench.OnRead = inputs => inputs.Stop = true;
        loop.RunOnce();
        Assert.Equal(1, Saves());
        loop.RunOnce();
        Assert.Equal(1, Saves());
    }

    [Fact]
    public void An_alarm_that_comes_or_goes_is_saved_at_once()
    {
        _bench.Settings[SettingField.LevelLowFitted] = 1;
        _bench.Settings[SettingField.LevelDebounceMs] = 0;
        MainLoop loop = _bench.Start();
        bool low = true;
        _bench.OnRead = inputs => inputs.LevelLow = low;
        loop.RunOnce();
        Assert.Equal(1, Saves());
        low = false;
        loop.RunOnce();
        Assert.Equal(2, Saves());
        loop.RunOnce();
        Assert.Equal(2, Saves());
    }

    [Fact]
    public void That_a_dose_by_pressure_came_to_venting_is_saved_at_once_and_so_is_its_next_pressure_cycle()
    {
        Settings settings = _bench.Settings;
        settings[SettingField.DoseMode] = (int)DoseMode.Pressure;
        settings[SettingField.SwitchCount] = 0;
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureMissingMs] = 60_000;
        settings[SettingField.PressureCycles] = 2;
        settings[SettingField.HoldMs] = 2_000;
        settings[SettingField.VentMs] = 5_000;
        settings[SettingField.SaveIntervalMs] = 3_600_000;
        int pressureMbar = 0;
        _bench.OnRead = inputs => inputs.PressureMbar = pressureMbar;
        MainLoop loop = ToDose();
        Assert.Equal(0, Turn(10_000, 0, DoseStep.Hold));
        Assert.Equal(0, Turn(0, 500, DoseStep.Pressurise));
        Assert.Equal(0, Turn(10_000, 500, DoseStep.Hold));
        Assert.Equal(1, Turn(10_000, 2_000, DoseStep.Vent));
        Assert.Equal(1, Turn(0, 10, DoseStep.Vent));
        Assert.Equal(2, Turn(0, 5_000, DoseStep.Pressurise));
        Assert.Equal(1, loop.Core.PressureCycles);

        MainLoop second = _bench.Start();
        Assert.Equal((1, true), (second.Core.PressureCycles, second.Core.DosePending));

        int Turn(int mbar, uint passedMs, DoseStep step)
        {
            pressureMbar = mbar;
            _bench.NowMs += passedMs;
            loop.RunOnce();
            Assert.Equal(step, loop.Core.DoseStep);
            return Saves();
        }
    }

    [Fact]
    public void The_state_is_saved_once_in_each_interval()
    {
        _bench.Settings[SettingField.SaveIntervalMs] = 5_000;
        _bench.Settings[SettingField.RestartDelayMs] = 1_000;
        MainLoop loop = _bench.Start();
        _bench.NowMs += 4_999;
        loop.RunOnce();
        Assert.Equal(0, Saves());
        _bench.NowMs += 1;
        loop.RunOnce();
        Assert.Equal(1, Saves());
        _bench.NowMs += 900;
        loop.RunOnce();
        Assert.Equal(1, Saves());
    }

    /// <summary>Else power cuts one interval apart, with a save at each change of phase in between, would never save any progress of a dose.</summary>
    [Fact]
    public void A_save_for_another_reason_does_not_put_off_that_of_the_interval()
    {
        _bench.Settings[SettingField.SaveIntervalMs] = 5_000;
        _bench.Settings[SettingField.RestartDelayMs] = 3_000;
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        _bench.NowMs += 3_000;
        loop.RunOnce();
        Assert.Equal(Phase.Dose, loop.Core.Phase);
        Assert.Equal(1, Saves());
        _bench.NowMs += 2_000;
        loop.RunOnce();
        Assert.Equal(2, Saves());
    }

    [Fact]
    public void The_wait_is_no_longer_than_until_the_next_save()
    {
        _bench.Settings[SettingField.SaveIntervalMs] = 5_000;
        _bench.Settings[SettingField.RestartDelayMs] = 1_000;
        MainLoop loop = _bench.Start();
        loop.Run();
        _bench.NowMs += 1_500;
        loop.Run();
        _bench.OnWrite = () => _bench.NowMs = 6_000;
        _bench.StorageWorks = () =>
        {
            _bench.NowMs = 20_000;
            return true;
        };
        loop.Run();
        Assert.Equal([5_000, 3_500, 5_000], _bench.Waits);
    }

    [Fact]
    public void The_interval_survives_a_wrap_of_the_clock()
    {
        _bench.NowMs = uint.MaxValue - 1_000;
        _bench.Settings[SettingField.SaveIntervalMs] = 5_000;
        _bench.Settings[SettingField.RestartDelayMs] = 1_000;
        MainLoop loop = _bench.Start();
        _bench.NowMs = unchecked(_bench.NowMs + 4_999);
        loop.RunOnce();
        Assert.Equal(0, Saves());
        _bench.NowMs++;
        loop.RunOnce();
        Assert.Equal(1, Saves());
    }

    [Fact]
    public void A_new_loop_goes_on_from_the_saved_state()
    {
        MainLoop first = ToDose();
        Assert.False(first.StateRestored);
        MainLoop second = _bench.Start();
        Assert.True(second.StateRestored);
        Assert.True(second.Core.DosePending);
        Assert.Equal(Phase.Rest, second.Core.Phase);
        second.RunOnce();
        Assert.DoesNotContain("write pump", _bench.Calls);
    }

    [Fact]
    public void The_outputs_are_safe_until_the_first_scan_after_a_restore()
    {
        ToDose();
        bool pump = true;
        MainLoop loop = _bench.Start();
        _bench.OnRead = _ => pump = _bench.Calls.Contains("write pump");
        loop.RunOnce();
        Assert.False(pump);
        Assert.Equal(["read", "write healthy", "kick"], _bench.Calls);
    }

    [Fact]
    public void Storage_that_takes_nothing_is_counted_and_does_not_stop_the_loop()
    {
        _bench.StorageWorks = () => false;
        MainLoop loop = _bench.Start();
        Assert.Equal(1, loop.FailedSaves);
        _bench.OnRead = inputs => inputs.Stop = true;
        Assert.True(loop.RunOnce());
        Assert.Equal(2, loop.FailedSaves);
        Assert.Contains("kick", _bench.Calls);
    }

    [Fact]
    public void A_save_interval_that_is_refused_is_kept_above_zero()
    {
        _bench.Settings[SettingField.SaveIntervalMs] = 0;
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        Assert.True(loop.Core.Alarms.Stands(AlarmId.SettingsInvalid));
        loop.Run();
        Assert.Equal([1], _bench.Waits);
    }

    private MainLoop ToDose()
    {
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        _bench.NowMs += 10_000;
        loop.RunOnce();
        Assert.Equal(Phase.Dose, loop.Core.Phase);
        _bench.Calls.Clear();
        return loop;
    }

    private int Saves() => _bench.Calls.Count(call => call == "save");
}
