using System;
using System.Collections.Generic;

namespace LubeController.Core.Tests;

/// <summary>One row of the phase table: how the event of that name is brought about, whatever the phase.</summary>
/// <param name="Change">Settings under which nothing else happens meanwhile.</param>
/// <param name="Circumstance">What the row presupposes, made before the event; null where nothing.</param>
/// <param name="Cause">The event.</param>
internal sealed record PhaseEvent(Action<Settings> Change, Action<CoreBench>? Circumstance, Action<CoreBench> Cause)
{
    private const int LongMs = 3_600_000;

    /// <summary>Whether rest is entered with a dose pending, failed after a completed try, or neither.</summary>
    public Situation Situation { get; init; }

    public static readonly IReadOnlyDictionary<string, PhaseEvent> All = new Dictionary<string, PhaseEvent>
    {
        ["rest over"] = new(RestOf(30_000), null, bench => bench.Run(31_000)),
        ["restart delay over, dose pending"] = new(Calm, null, Wait(TestSettings.RestartMs)) { Situation = Situation.Pending },
        ["new-try delay over, dose pending, new tries set"] = new(NewTries, null, Wait(20_000)),
        ["rest over after a completed try, new tries set"] = new(With(NewTries, RestOf(30_000)), null, Wait(31_000)) { Situation = Situation.Tried },
        ["rest over, new tries set, interlock stands"] = new(With(NewTries, RestOf(30_000)), bench => bench.Empty(true), Wait(31_000)),
        ["dose counted"] = new(Calm, null, bench => bench.Pulses(4)),
        ["run time over"] = new(RunTime, null, Wait(30_000)),
        ["pressure held and vented, last pressure cycle"] = new(ByPressure, null, HeldAndVented),
        ["line not vented in its time"] = new(ByPressure, null, bench => bench.Pressure(12_000).Run(TestSettings.HoldMs + TestSettings.VentLimitMs + 20)),
        ["pulse timeout, retries left"] = new(Times(5_000, 1), null, Wait(10_500)),
        ["pulse timeout, none left"] = new(Times(5_000, 0), null, Wait(10_500)),
        ["dose limit over"] = new(With(Calm, settings => settings[SettingField.DoseLimitMs] = 10_000), null, Wait(10_500)),
        ["pressure not reached in its time"] = new(Pressure, null, Wait(10_500)),
        ["dose-ending switch found wrong"] = new(Calm, null, bench => bench.Chatter()),
        ["pause over"] = new(With(Calm, settings => settings[SettingField.RetryPauseMs] = 10_000), null, Wait(10_500)),
        ["interlock alarm"] = new(Calm, null, bench => bench.Empty(true)),
        ["stop on"] = new(Calm, null, bench => { bench.Inputs.Stop = true; bench.Run(20); }),
        ["start pressed"] = new(Calm, null, Press(Button.Start)),
        ["start pressed, pump-stopping failure stands"] = new(Calm, bench => bench.Chatter(), Press(Button.Start)),
        ["start pressed, stop on"] = new(Calm, Stop, Press(Button.Start)),
        ["dose-now pressed"] = new(Calm, null, Press(Button.DoseNow)),
        ["prime pressed"] = new(Calm, null, bench => bench.Hold(Button.Prime)),
        ["prime pressed, interlock stands"] = new(Calm, bench => bench.Empty(true), bench => bench.Hold(Button.Prime)),
        ["prime pressed, stop on"] = new(Calm, Stop, bench => bench.Hold(Button.Prime)),
        ["prime released"] = new(Calm, null, bench => bench.Set(Button.Prime, false).Run(50)),
        ["prime limit over"] = new(With(Calm, settings => settings[SettingField.PrimeLimitMs] = 10_000), null, Wait(10_500)),
        ["reset pressed, every condition ended"] = new(Calm, null, Press(Button.Reset)),
        ["reset pressed, interlock condition lasts"] = new(Calm, bench => bench.Empty(true), Press(Button.Reset)),
        ["acknowledge pressed"] = new(Calm, null, Press(Button.Acknowledge)),
        ["output test pressed"] = new(Calm, null, Press(Button.OutputTest)),
        ["output test pressed, a failure stands"] = new(Calm, bench => bench.Empty(true), Press(Button.OutputTest)),
        ["output test pressed, stop on"] = new(Calm, Stop, Press(Button.OutputTest)),
        ["output test over"] = new(With(Calm, settings => settings[SettingField.OutputTestMs] = 10_000), null, Wait(10_500)),
        ["power-up after a cut in this phase"] = new(Calm, null, bench => { bench.Set(Button.Prime, false).CutPower(); bench.Run(1_000); }),
    };

    private static Action<Settings> With(Action<Settings> first, Action<Settings> second) => settings =>
    {
        first(settings);
        second(settings);
    };

    private static Action<CoreBench> Wait(int durationMs) => bench => bench.Run(durationMs);

    private static Action<CoreBench> Press(Button button) => bench => bench.Press(button);

    private static void Stop(CoreBench bench)
    {
        bench.Inputs.Stop = true;
        bench.Run(20);
    }

    /// <summary>No time comes to its end within a minute, but the restart delay.</summary>
    private static void Calm(Settings settings)
    {
        settings[SettingField.RestMs] = LongMs;
        settings[SettingField.OverdueMs] = 2 * LongMs;
        settings[SettingField.RetryPauseMs] = LongMs;
        settings[SettingField.PrimeLimitMs] = LongMs;
        settings[SettingField.DoseLimitMs] = LongMs;
        settings[SettingField.OutputTestMs] = 600_000;
        settings.SetTimeout(0, LongMs);
        settings.SetRetries(0, 1);
    }

    private static Action<Settings> RestOf(int restMs) => With(Calm, settings => settings[SettingField.RestMs] = restMs);

    private static void NewTries(Settings settings)
    {
        Calm(settings);
        settings[SettingField.NewTryDelayMs] = 15_000;
    }

    private static void RunTime(Settings settings)
    {
        Calm(settings);
        settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
        settings[SettingField.DoseRunMs] = 30_000;
    }

    private static void ByPressure(Settings settings)
    {
        Calm(settings);
        TestSettings.ByPressure(settings);
        settings[SettingField.PressureMissingMs] = LongMs;
        settings[SettingField.DoseLimitMs] = 2 * LongMs;

        // Not needed by the dose, but the way to a retry pause and to failed leads over its timeout.
        settings[SettingField.SwitchCount] = 1;
    }

    private static void HeldAndVented(CoreBench bench) =>
        bench.Pressure(12_000).Run(TestSettings.HoldMs + 10).Pressure(0).Run(TestSettings.VentMs + 10);

    private static Action<Settings> Times(int timeoutMs, int retries) => settings =>
    {
        Calm(settings);
        settings.SetTimeout(0, timeoutMs);
        settings.SetRetries(0, retries);
    };

    private static void Pressure(Settings settings)
    {
        Calm(settings);
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureMissingMs] = 10_000;
    }
}

/// <summary>What stands behind a phase when the event comes.</summary>
internal enum Situation
{
    /// <summary>Rest with no dose pending; failed with a stalled dose pending.</summary>
    Plain,

    /// <summary>A dose is pending.</summary>
    Pending,

    /// <summary>Failed with no dose pending, since a new try was completed.</summary>
    Tried,
}
