using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Brings a new core to a phase, through scans alone.</summary>
internal static class PhaseRoad
{
    /// <summary>Settings for the way there are changed back by new settings at its end.</summary>
    public static CoreBench To(Phase phase, PhaseEvent row, Phase primeFrom = Phase.Rest)
    {
        CoreBench bench = phase switch
        {
            Phase.Rest => ToRest(row),
            Phase.Dose => ToDose(row),
            Phase.RetryPause => ToRetryPause(row),
            Phase.Prime => To(primeFrom, row).Hold(Button.Prime),
            Phase.Stopped => ToStopped(row),
            Phase.OutputTest => ToStopped(row).Press(Button.OutputTest),
            _ => ToFailed(row),
        };
        Assert.Equal(phase, bench.Phase);
        bench.ClearLog();
        return bench;
    }

    private static CoreBench Made(PhaseEvent row, Action<Settings>? more = null) => new(settings =>
    {
        row.Change(settings);
        more?.Invoke(settings);
    });

    private static CoreBench ToRest(PhaseEvent row)
    {
        CoreBench bench = Made(row, Reachable);
        if (row.Situation == Situation.Pending)
            return Settle(bench.Run(1_000), row);
        return Settle(bench.ToRest().Run(TestSettings.RunOnMs + 1_000), row);
    }

    private static CoreBench ToDose(PhaseEvent row) => Settle(Made(row, Reachable).ToDose(), row);

    private static CoreBench ToRetryPause(PhaseEvent row)
    {
        CoreBench bench = Made(row, settings =>
        {
            Reachable(settings);
            settings.SetTimeout(0, 1_000);
            settings.SetRetries(0, 1);
            settings[SettingField.FirstPulseAllowanceMs] = 0;
        }).ToDoseAtOnce();
        bench.RunUntil(Phase.RetryPause, 2_000);
        return Settle(bench, row);
    }

    private static CoreBench ToStopped(PhaseEvent row)
    {
        CoreBench bench = row.Situation == Situation.Pending ? ToDose(row) : ToRest(row);
        bench.Inputs.Stop = true;
        bench.Run(20);
        bench.Inputs.Stop = false;
        return bench.Run(20);
    }

    private static CoreBench ToFailed(PhaseEvent row)
    {
        CoreBench bench = Made(row, settings =>
        {
            Reachable(settings);
            settings.SetTimeout(0, 1_000);
            settings.SetRetries(0, 0);
            settings[SettingField.FirstPulseAllowanceMs] = 0;
        }).ToDoseAtOnce();
        bench.RunUntil(Phase.Failed, 2_000);
        if (row.Situation == Situation.Tried)
        {
            bench.RunUntil(Phase.Dose, 20_000);
            bench.Pulses(4);
        }

        return Settle(bench, row);
    }

    private static CoreBench ToDoseAtOnce(this CoreBench bench) => bench.Run(1_000).Press(Button.DoseNow);

    /// <summary>The way there is short whatever the row needs later: its settings come into force at the end.</summary>
    private static void Reachable(Settings settings)
    {
        if (settings.DoseMode == DoseMode.RunTime)
            settings[SettingField.DoseRunMs] = 2_000;
        if (settings.DoseMode == DoseMode.Pressure)
            settings[SettingField.VentMs] = 500;
        else
            settings[SettingField.PressureMissingMs] = 0;
    }

    private static CoreBench Settle(CoreBench bench, PhaseEvent row)
    {
        Assert.True(bench.Core.UseSettings(TestSettings.Make(row.Change)));
        return bench;
    }
}
