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
        Assert.Equal(["read", "write healthy", "save", "log", "kick"], _bench.Calls);
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
        Assert.Equal(["write safe", "boot", "log", "restart"], _bench.Calls.TakeLast(4));
        Assert.Equal(where == "wait" ? 1 : 0, _bench.Calls.Count(call => call == "kick"));
        Assert.Equal(1, loop.Faults);
    }

    [Fact]
    public void Outputs_that_cannot_even_be_made_safe_do_not_keep_the_board_from_restarting()
    {
        MainLoop loop = ToDose();
        _bench.OnWrite = () => throw new InvalidOperationException("invented");
        Assert.False(loop.RunOnce());
        Assert.Equal(["read", "write pump", "write safe", "boot", "log", "restart"], _bench.Calls);
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
        Assert.Equal(["read", "write healthy", "log", "kick"], _bench.Calls);
    }

    [Fact]
    public void Storage_that_takes_nothing_is_told_and_does_not_stop_the_loop()
    {
        _bench.StorageWorks = () => false;
        MainLoop loop = _bench.Start();
        _bench.OnRead = inputs => inputs.Stop = true;
        Assert.True(loop.RunOnce());
        Assert.Contains("kick", _bench.Calls);
        Assert.True(loop.Core.Alarms.Stands(AlarmId.StorageCorrupt));
        Assert.False(loop.Core.Alarms.FailureStands);
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

    [Fact]
    public void A_start_commits_the_boot_record_before_the_state_and_both_before_the_logbook()
    {
        _ = new MainLoop(_bench.Board, _bench.Storage, _bench.Settings, null);
        Assert.Equal(["settings", "settings", "boot", "save", "log", "log"], _bench.Calls);
        _bench.Calls.Clear();
        _ = new MainLoop(_bench.Board, _bench.Storage, _bench.Settings, null);
        Assert.Equal(["boot", "save", "log"], _bench.Calls);
    }

    [Fact]
    public void A_fault_is_marked_before_the_restart_so_that_a_power_cut_does_not_hide_it()
    {
        MainLoop loop = ToDose();
        _bench.OnRead = _ => throw new InvalidOperationException("invented");
        Assert.False(loop.RunOnce());
        _bench.OnRead = _ => { };
        MainLoop next = new(_bench.Board, _bench.Storage, _bench.Settings, null);
        Assert.True(next.Core.Alarms.IsLatched(AlarmId.LogicFault));
        Assert.Equal((1, false, ResetCause.PowerOn), (next.Memory.Boot.Faults, next.Memory.Boot.FaultPending, next.Memory.Boot.Cause));
    }

    [Theory]
    [InlineData(ResetCause.Watchdog, true)]
    [InlineData(ResetCause.LoopFault, true)]
    [InlineData(ResetCause.BrownOut, false)]
    [InlineData(ResetCause.PowerOn, false)]
    public void The_cause_of_a_start_is_kept_and_a_loop_that_hung_raises_logic_fault(ResetCause cause, bool raised)
    {
        _bench.Board.ResetCause.Returns(cause);
        MainLoop loop = _bench.Start();
        Assert.Equal(raised, loop.Core.Alarms.Stands(AlarmId.LogicFault));
        Assert.Equal(cause, loop.Memory.Boot.Cause);
    }

    [Fact]
    public void A_fault_waits_in_the_boot_record_until_its_alarm_stands_in_a_saved_state()
    {
        _bench.Board.ResetCause.Returns(ResetCause.Watchdog);
        _bench.StorageWorks = () => _bench.Calls[^1] != "save";
        Assert.True(_bench.Start().Memory.Boot.FaultPending);
        _bench.Board.ResetCause.Returns(ResetCause.PowerOn);
        _bench.StorageWorks = () => true;
        MainLoop loop = _bench.Start();
        Assert.True(loop.Core.Alarms.Stands(AlarmId.LogicFault));
        Assert.False(loop.Memory.Boot.FaultPending);
    }

    [Fact]
    public void Stored_settings_are_used_at_once_and_at_the_next_start_in_place_of_those_compiled_in()
    {
        MainLoop loop = _bench.Start();
        var settings = new Settings();
        settings[SettingField.RestMs] = 77_000;
        settings[SettingField.SaveIntervalMs] = 20_000;
        Assert.True(loop.StoreSettings(settings));
        loop.RunOnce();
        loop.Run();
        Assert.Equal([20_000], _bench.Waits);
        MainLoop next = _bench.Start();
        Assert.Equal((77_000, 2), (next.Memory.Settings.Values[SettingField.RestMs], next.Memory.Settings.Stores));
    }

    [Fact]
    public void Settings_that_are_refused_or_not_taken_by_the_storage_change_nothing()
    {
        MainLoop loop = _bench.Start();
        var settings = new Settings();
        settings[SettingField.RestMs] = 0;
        Assert.False(loop.StoreSettings(settings));
        Assert.Empty(_bench.Calls);
        settings[SettingField.RestMs] = 77_000;
        _bench.StorageWorks = () => false;
        Assert.False(loop.StoreSettings(settings));
        loop.RunOnce();
        Assert.False(loop.Core.Alarms.Stands(AlarmId.SettingsInvalid));
        _bench.StorageWorks = () => true;
        Assert.Equal(new Settings()[SettingField.RestMs], _bench.Start().Memory.Settings.Values[SettingField.RestMs]);
    }

    [Fact]
    public void Settings_compiled_in_that_are_refused_are_not_stored()
    {
        _bench.Settings[SettingField.SaveIntervalMs] = 0;
        Assert.Equal(SettingsState.NeverStored, _bench.Start().Memory.Settings.State);
    }

    [Fact]
    public void Settings_that_were_stored_and_cannot_be_read_interlock_the_pump()
    {
        _bench.Start();
        _bench.Blocks[0]![40] ^= 1;
        _bench.Blocks[1]![40] ^= 1;
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        Assert.True(loop.Core.Alarms.Stands(AlarmId.SettingsInvalid));
        Assert.True(loop.Core.Alarms.InterlockStands);
        Assert.False(loop.Core.Alarms.Stands(AlarmId.StorageCorrupt));
    }

    [Fact]
    public void One_bank_that_is_lost_is_mended_from_the_other_and_raises_nothing()
    {
        _bench.Settings[SettingField.RestMs] = 99_000;
        _bench.Start();
        _bench.Blocks[1]![40] ^= 1;
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        Assert.False(loop.Core.Alarms.Stands(AlarmId.StorageCorrupt) || loop.Core.Alarms.Stands(AlarmId.SettingsInvalid));
        Assert.Equal(99_000, loop.Memory.Settings.Values[SettingField.RestMs]);
        _bench.Blocks[0]![40] ^= 1;
        Assert.Equal(99_000, _bench.Start().Memory.Settings.Values[SettingField.RestMs]);
    }

    [Fact]
    public void What_a_scan_saw_stands_in_the_logbook_with_time_and_person()
    {
        _bench.Board.HasWallTime.Returns(true);
        _bench.Board.WallTimeS.Returns(1_700_000_000u);
        MainLoop loop = _bench.Start();
        loop.RunOnce();
        _bench.NowMs += 1_500;
        _bench.OnRead = inputs => inputs.Stop = true;
        loop.RunOnce();
        _bench.NowMs += 500;
        _bench.OnRead = inputs =>
        {
            inputs.Stop = true;
            inputs.SetDown(Button.DoseNow, true);
        };
        loop.RunOnce();
        _bench.NowMs += 500;
        loop.RunOnce();
        var entry = new LogEntry();
        var found = Enumerable.Range(0, loop.Memory.Log.Places).Where(place => loop.Memory.Log.TryRead(place, entry))
            .Select(_ => (entry.What, entry.Source, entry.Subject, entry.Detail, (entry.UptimeS * 1000) + entry.UptimeMs, entry.HasWallTime ? entry.WallTimeS : 0)).ToList();
        Assert.Equal(
            [
                (LogEvent.Started, LogSource.Controller, (int)ResetCause.PowerOn, 1, 0, 1_700_000_000u),
                ((int)ScanEvent.PhaseChanged, LogSource.Controller, (int)Phase.Rest, (int)Phase.Stopped, 1_500, 1_700_000_000u),
                ((int)ScanEvent.PressRefused, LogSource.Button, (int)Button.DoseNow, 0, 2_500, 1_700_000_000u),
            ],
            found);
    }

    [Fact]
    public void A_turn_that_saves_and_notes_allocates_nothing()
    {
        var storage = new Emulator.Storage.FlashStorage(MemoryLayout.FewestBlocks, MemoryLayout.ShortestBlock);
        var board = new PlainBoard();
        var loop = new MainLoop(board, storage, new Settings(), null);
        loop.RunOnce();
        board.Stop = true;
        loop.RunOnce();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int turn = 0; turn < 400; turn++)
        {
            board.NowMs += 60_000;
            board.DoseNow = (turn & 2) != 0;
            loop.RunOnce();
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        var layout = new MemoryLayout(storage.BlockCount, storage.BlockLength);
        Assert.True(Enumerable.Range(layout.FirstLog, layout.LogBlocks).Sum(storage.Programs) > 90);
        Assert.True(Enumerable.Range(layout.FirstState, layout.StateBlocks).Sum(storage.Writes) > 399);
    }

    private sealed class PlainBoard : IBoard
    {
        public bool Stop { get; set; }

        public bool DoseNow { get; set; }

        public uint NowMs { get; set; }

        public ResetCause ResetCause => ResetCause.PowerOn;

        public int LateMs => 0;

        public bool HasWallTime => false;

        public uint WallTimeS => 0;

        public void ReadInputs(Inputs inputs)
        {
            inputs.Stop = Stop;
            inputs.SetDown(Button.DoseNow, DoseNow);
        }

        public void WriteOutputs(Outputs outputs)
        {
        }

        public void KickWatchdog()
        {
        }

        public bool WaitForNextScan(Controller core, int mostMs) => false;

        public void Restart()
        {
        }
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
