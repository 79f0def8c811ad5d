namespace LubeController.Core;

/// <summary>Name, unit, range, preset and meaning of every setting, in one place. Index: <see cref="SettingField"/>.</summary>
public static class SettingTable
{
    /// <summary>Longest time a setting can hold, 24 days: below 2^31 ms with room for the sums that are checked.</summary>
    public const int LongestMs = 24 * 24 * 3600 * 1000;

    private const int Minute = 60 * 1000;
    private const int Hour = 60 * Minute;

    private static readonly SettingSpec[] Specs = Make();

    /// <summary>The description of a setting; never null.</summary>
    /// <param name="field">0 to <see cref="SettingField.Count"/> - 1.</param>
    public static SettingSpec Spec(int field) => Specs[field];

    /// <summary>The index of a setting by name, or -1.</summary>
    public static int Find(string name)
    {
        for (int field = 0; field < SettingField.Count; field++)
        {
            if (Specs[field].Name == name)
                return field;
        }

        return -1;
    }

    private static SettingSpec[] Make()
    {
        var specs = new SettingSpec[SettingField.Count];
        MakeDose(specs);
        MakeRest(specs);
        MakeSensors(specs);
        MakeVenting(specs);
        MakePlatform(specs);
        MakeComparisons(specs);
        for (int index = 0; index < Inputs.MaxCycleSwitches; index++)
            MakeSwitch(specs, index);
        AlarmSpec[] alarms = AlarmTable.MakeRows();
        for (int index = 0; index < alarms.Length; index++)
            MakeDelays(specs, (AlarmId)index, alarms[index]);
        return specs;
    }

    private static SettingSpec Time(string name, int minimum, int maximum, int preset, string meaning) =>
        new SettingSpec(name, SettingUnit.Milliseconds, minimum, maximum, preset, meaning);

    private static SettingSpec Number(string name, int minimum, int maximum, int preset, string meaning) =>
        new SettingSpec(name, SettingUnit.Count, minimum, maximum, preset, meaning);

    private static SettingSpec Flag(string name, int preset, string meaning) =>
        new SettingSpec(name, SettingUnit.Flag, 0, 1, preset, meaning);

    private static void MakeDose(SettingSpec[] specs)
    {
        specs[SettingField.SwitchCount] = Number("cycle-switches", 0, Inputs.MaxCycleSwitches, 1, "Cycle switches fitted to the divider.");
        specs[SettingField.DoseEndingSwitch] = Number("dose-ending-switch", 1, Inputs.MaxCycleSwitches, 1, "The switch, counted from 1, whose pulses end a dose.");
        specs[SettingField.EdgesPerCycle] = Number("edges-per-cycle", 1, 2, 1, "1 counts full cycles; 2 counts both edges, so half cycles, which are approximate and feed one side of each twin section.");
        specs[SettingField.DoseMode] = new SettingSpec("dose-by", new[] { "cycles", "run-time", "pressure" }, 0, "What ends a dose; by run time nothing shows that anything was delivered, by pressure (single-line system with vent valve) nothing shows that each injector delivered.");
        specs[SettingField.DoseEdges] = Number("dose-edges", 1, 10000, 3, "Counted edges of one dose: full cycles, or half cycles with two edges per cycle.");
        specs[SettingField.DoseRunMs] = Time("dose-run-time", 1000, 24 * Hour, 60 * 1000, "Pump-on time of a dose that ends by run time.");
        specs[SettingField.DoseLimitMs] = Time("dose-limit", 1000, 48 * Hour, 30 * Minute, "Longest pump-on time of one dose.");
        specs[SettingField.FirstPulseAllowanceMs] = Time("first-pulse-allowance", 0, 24 * Hour, 10 * 1000, "Extra time for the first pulse of a dose, which has to wait for pressure.");
        specs[SettingField.RetryPauseMs] = Time("retry-pause", 100, 24 * Hour, 5 * 1000, "Pump-off time before a retry.");
        specs[SettingField.MinPulseIntervalMs] = Time("shortest-pulse-interval", 0, Hour, 0, "Pulses of one direction closer than this come faster than the pump can cause; 0 judges none.");
        specs[SettingField.RunOnMs] = Time("run-on-time", 0, Hour, 5 * 1000, "Time after the pump stops in which stored pressure may still cause pulses.");
        specs[SettingField.ReadyDelayMs] = Time("switch-ready-delay", 0, 10 * 1000, 300, "Time after power-up before a cycle switch is believed (IEC 60947-5-2 allows 300 ms; from memory).");
        specs[SettingField.ChatterChanges] = Number("chatter-changes", 0, 1000, 20, "Level changes of a cycle switch within the chatter window that prove it chatters; 0 judges none.");
        specs[SettingField.ChatterWindowMs] = Time("chatter-window", 100, 10 * Minute, 2000, "Window in which level changes are counted.");
        specs[SettingField.WitnessPulses] = Number("witness-pulses", 0, 100, 3, "Pulses of one switch without any of another that prove the other wrong; 0 judges none, 1 and 2 prove nothing.");
    }

    private static void MakeRest(SettingSpec[] specs)
    {
        specs[SettingField.RestMode] = new SettingSpec("rest-by", new[] { "time", "shaft", "either", "rule" }, 0, "What ends a rest.");
        specs[SettingField.RestMs] = Time("rest", 1000, LongestMs, 20 * Minute, "Rest by elapsed time.");
        specs[SettingField.RestRevolutions] = Number("rest-revolutions", 1, 100000000, 10000, "Rest by shaft revolutions.");
        specs[SettingField.RestFallbackMs] = Time("rest-fallback", 0, LongestMs, 0, "Rest by time while the shaft signal is lost or a rule is at fault; needed by shaft and rule.");
        specs[SettingField.RestOnlyWhileRunning] = Flag("rest-only-while-running", 0, "Whether rest counts only while the machine runs.");
        specs[SettingField.RuleLongestRestMs] = Time("rule-longest-rest", 1000, LongestMs, 24 * Hour, "Longest rest a user's rule may ask for.");
        specs[SettingField.RestartDelayMs] = Time("restart-delay", 1000, Hour, 10 * 1000, "Rest before an interrupted dose goes on, after a reset from failed, and where no valid state is found.");
        specs[SettingField.NewTryDelayMs] = Time("new-try-delay", 0, LongestMs, 0, "Rest in failed before a new try of an interrupted dose; 0 sets no new tries.");
        specs[SettingField.OverdueMs] = Time("overdue-limit", 1000, LongestMs, 2 * Hour, "Longest powered time without a completed dose.");
        specs[SettingField.PrimeLimitMs] = Time("prime-limit", 1000, Hour, 5 * Minute, "Longest time one press of prime may run the pump.");
        specs[SettingField.ButtonDebounceMs] = Time("button-debounce", 0, 1000, 20, "Time a button must rest at a level.");
        specs[SettingField.SaveIntervalMs] = Time("save-interval", 1000, Hour, Minute, "Longest time between two saves of the state.");
    }

    private static void MakeSensors(SettingSpec[] specs)
    {
        specs[SettingField.ShaftFitted] = Flag("shaft-switch", 0, "Whether a shaft switch is fitted.");
        specs[SettingField.ShaftPulsesPerRevolution] = Number("shaft-pulses-per-revolution", 1, 1000, 1, "Shaft pulses of one revolution.");
        specs[SettingField.ShaftMaxPerMinute] = new SettingSpec("shaft-fastest-speed", SettingUnit.PerMinute, 1, 100000, 3000, "Fastest speed of the shaft.");
        specs[SettingField.ShaftMinPulseWidthUs] = new SettingSpec("shaft-shortest-pulse", SettingUnit.Microseconds, 0, 1000000, 1000, "Shortest pulse the counter input takes; pause and pulse must both be longer.");
        specs[SettingField.ShaftLostMs] = Time("shaft-lost-time", 100, 24 * Hour, 30 * 1000, "Time without a shaft pulse, the machine running, after which the signal is lost.");
        specs[SettingField.ShaftStandstillMs] = Time("shaft-standstill-time", 100, 24 * Hour, 10 * 1000, "Time without a shaft pulse after which the shaft says standstill.");
        specs[SettingField.LevelLowFitted] = Flag("level-low-switch", 0, "Whether a low-level switch is fitted.");
        specs[SettingField.LevelLowInverted] = Flag("level-low-inverted", 0, "Whether the low switch opens when the level is low.");
        specs[SettingField.LevelEmptyFitted] = Flag("level-empty-switch", 0, "Whether an empty switch is fitted.");
        specs[SettingField.LevelEmptyInverted] = Flag("level-empty-inverted", 0, "Whether the empty switch opens when the reservoir is empty.");
        specs[SettingField.LevelDebounceMs] = Time("level-debounce", 0, Minute, 500, "Time a level switch must rest at a level.");
        specs[SettingField.PressureSwitchUse] = new SettingSpec("pressure-switch-shows", new[] { "nothing", "pressure-reached", "pressure-limit" }, 0, "What the pressure switch shows when on.");
        specs[SettingField.PressureSwitchInverted] = Flag("pressure-switch-inverted", 0, "Whether the pressure switch opens on pressure.");
        specs[SettingField.PressureDebounceMs] = Time("pressure-debounce", 0, Minute, 50, "Time the pressure switch must rest at a level.");
        specs[SettingField.PressureTransmitterFitted] = Flag("pressure-transmitter", 0, "Whether a pressure transmitter is fitted.");
        specs[SettingField.PressureReachedMbar] = new SettingSpec("pressure-reached", SettingUnit.Millibar, 0, 1000000, 10000, "Transmitter reading from which line pressure is reached.");
        specs[SettingField.PressureLimitMbar] = new SettingSpec("pressure-limit", SettingUnit.Millibar, 1000, 1000000, 250000, "Transmitter reading above which line pressure is too high.");
        specs[SettingField.PressureMissingMs] = Time("pressure-missing-time", 0, 24 * Hour, 0, "Pump-on time without line pressure after which it is missing; 0 judges none.");
    }

    private static void MakeVenting(SettingSpec[] specs)
    {
        specs[SettingField.HoldMs] = Time("hold-time", 100, Hour, 5 * 1000, "Time for which line pressure must last in a dose by pressure.");
        specs[SettingField.VentMs] = Time("vent-time", 100, Hour, 30 * 1000, "Time for which the line must stand vented, so that the injectors recharge.");
        specs[SettingField.VentLimitMs] = Time("vent-limit", 200, 2 * Hour, 2 * Minute, "Longest venting of a dose, pressure falling and vent-time together.");
        specs[SettingField.PressureVentedMbar] = new SettingSpec("pressure-vented", SettingUnit.Millibar, 0, 1000000, 5000, "Transmitter reading up to which the line is vented.");
        specs[SettingField.PressureCycles] = Number("pressure-cycles", 1, 100, 1, "Times that line pressure is reached, held and vented in one dose by pressure.");
        specs[SettingField.VentValveNormallyOpen] = Flag("vent-valve-normally-open", 1, "Whether the vent valve is open without power, so that its output closes it; if not, its output opens it.");
    }

    private static void MakePlatform(SettingSpec[] specs)
    {
        specs[SettingField.OverloadFitted] = Flag("pump-overload-contact", 0, "Whether the overload contact of the pump's motor is wired.");
        specs[SettingField.OverloadInverted] = Flag("pump-overload-inverted", 0, "Whether that contact opens on overload, so that a broken wire reads overload.");
        specs[SettingField.OverloadDebounceMs] = Time("pump-overload-debounce", 0, 10 * 1000, 50, "Time the overload contact must rest at a level.");
        specs[SettingField.PumpRevolutionsFitted] = Flag("pump-revolution-sensor", 0, "Whether the pump's revolutions are counted.");
        specs[SettingField.RevolutionMissingMs] = Time("pump-revolution-missing-time", 100, Hour, 10 * 1000, "Pump-on time without a revolution after which the pump counts as overloaded.");
        specs[SettingField.SupplyMeasured] = Flag("supply-measured", 0, "Whether the supply voltage is measured.");
        specs[SettingField.SupplyLimitMv] = new SettingSpec("supply-limit", SettingUnit.Millivolt, 1000, 60000, 19200, "Supply voltage below which nothing is believed and the pump is held.");
        specs[SettingField.SupplyHysteresisMv] = new SettingSpec("supply-hysteresis", SettingUnit.Millivolt, 0, 10000, 800, "How far above its limit the supply must come back.");
        specs[SettingField.ColdJudged] = Flag("lubricant-temperature-judged", 0, "Whether a cold lubricant is reported.");
        specs[SettingField.ColdLimitDeciC] = new SettingSpec("cold-limit", SettingUnit.DeciCelsius, -500, 1000, -50, "Lubricant temperature below which it counts as cold.");
        specs[SettingField.ColdHysteresisDeciC] = new SettingSpec("cold-hysteresis", SettingUnit.DeciKelvin, 0, 200, 20, "How far above its limit the temperature must come back.");
        specs[SettingField.OutputTestMs] = Time("output-test-time", 1000, 10 * Minute, 20 * 1000, "Length of the output test, in four equal parts.");
        specs[SettingField.RestartsMost] = Number("restarts-most", 0, 1000, 5, "Restarts within restart-window that are still expected; 0 judges none.");
        specs[SettingField.RestartWindowMs] = Time("restart-window", 1000, LongestMs, Hour, "Powered time within which restarts are counted.");
        specs[SettingField.ShelveLongestMs] = Time("shelve-longest", 1000, LongestMs, 8 * Hour, "Longest time for which an alarm may be shelved.");
        specs[SettingField.ScanLimitMs] = Time("scan-limit", 10, Minute, 200, "How much later than due a scan may come.");
    }

    private static void MakeComparisons(SettingSpec[] specs)
    {
        specs[SettingField.RunDownMs] = Time("run-down-time", 0, Hour, 5 * Minute, "Longest time for which the shaft may turn on after machine running has gone off; longer, the two disagree. 0 judges none.");
        specs[SettingField.PulsesShowPressure] = Flag("pulses-show-pressure", 0, "Whether the divider cannot move below the pressure that counts as reached, so that pulses without it show that sensors disagree.");
        specs[SettingField.PressurePulses] = Number("pulses-without-pressure", 1, 100, 3, "Pulses in a row without line pressure that show it.");
        specs[SettingField.PressureSpanMbar] = new SettingSpec("pressure-span", SettingUnit.Millibar, 0, 1000000, 0, "Pressure at 20 mA of the transmitter; readings that stand for less than 3.6 or more than 21 mA (NAMUR NE 43) are no pressure. 0 judges none.");
        specs[SettingField.DividerCycleMm3] = new SettingSpec("divider-volume-per-cycle", SettingUnit.CubicMillimetre, 0, 100000000, 0, "Volume of one full cycle of the divider, compared with what is pumped; 0 compares nothing.");
        specs[SettingField.PumpRevolutionMm3] = new SettingSpec("pump-volume-per-revolution", SettingUnit.CubicMillimetre, 0, 10000000, 0, "Volume of one revolution of the pump, where revolutions are counted.");
        specs[SettingField.PumpFlowMm3PerMinute] = new SettingSpec("pump-flow", SettingUnit.CubicMillimetrePerMinute, 0, 100000000, 0, "Flow of the pump, where revolutions are not counted.");
        specs[SettingField.VolumeTolerancePercent] = new SettingSpec("volume-tolerance", SettingUnit.Percent, 5, 95, 50, "How far the volume pumped may be from what the pulses stand for.");
        specs[SettingField.VolumeWindow] = Number("volume-window", 1, 1000, 5, "Whole cycles over which the volume is compared.");
    }

    private static void MakeSwitch(SettingSpec[] specs, int index)
    {
        string prefix = "switch-" + (char)('1' + index);
        specs[SettingField.OfSwitch(index, SettingField.SwitchDebounceMs)] = Time(prefix + "-debounce", 0, 10 * 1000, 50, "Time this cycle switch must rest at a level.");
        specs[SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs)] = Time(prefix + "-timeout", 100, 48 * Hour, Minute, "Pump-on time without a pulse of this switch after which its timeout ends.");
        specs[SettingField.OfSwitch(index, SettingField.SwitchRetries)] = Number(prefix + "-retries", 0, 100, 0, "Retries this switch allows before the divider counts as stalled.");
        specs[SettingField.OfSwitch(index, SettingField.SwitchInverted)] = Flag(prefix + "-inverted", 0, "Whether this cycle switch opens when it sees the piston.");
    }

    private static void MakeDelays(SettingSpec[] specs, AlarmId id, AlarmSpec alarm)
    {
        int longestOn = alarm.TakesDelayOn ? Hour : 0;
        int presetOff = alarm.IsMomentary ? Minute : 0;
        specs[SettingField.DelayOn(id)] = Time(alarm.Name + "-delay-on", 0, longestOn, 0, "Time the condition must last before the alarm is raised.");
        specs[SettingField.DelayOff(id)] = Time(alarm.Name + "-delay-off", 0, 24 * Hour, presetOff, "Time the condition must be absent before it counts as ended.");
    }
}
