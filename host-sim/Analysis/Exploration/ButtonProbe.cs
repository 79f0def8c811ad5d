using System;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>Tries from a state whether a button leads out of it, once everything has been quiet for a while.</summary>
internal sealed class ButtonProbe(ExploredCore explored)
{
    /// <summary>Steps in which inputs that have become quiet are accepted.</summary>
    public const int SettleSteps = 4;

    /// <summary>Steps for which everything is left quiet before a reset.</summary>
    public int QuietSteps { get; } = (LongestDelayMs(explored.Settings) / explored.Setup.StepMs) + SettleSteps;

    /// <summary>The properties violated, one bit each. The core may be left anywhere.</summary>
    public int Violated() => explored.Core.Phase switch
    {
        Phase.Failed => ResetLeavesFailed() ? 0 : CoreProperty.ResetLeavesFailed.Bit(),
        Phase.Stopped => StartLeavesStopped() ? 0 : CoreProperty.StartLeavesStopped.Bit(),
        _ => 0,
    };

    private static int LongestDelayMs(Settings settings)
    {
        int longest = settings[SettingField.ChatterWindowMs] * (settings[SettingField.ChatterChanges] > 0 ? 2 : 0);
        int debounceMs = Math.Max(settings[SettingField.LevelDebounceMs], settings[SettingField.OverloadDebounceMs]);
        for (int index = 0; index < AlarmTable.Count; index++)
        {
            // Only alarms that keep the phase failed are waited for.
            if (AlarmTable.Spec((AlarmId)index).Action == AlarmAction.Interlock || index == (int)AlarmId.CycleSwitchFault)
                longest = Math.Max(longest, settings[SettingField.DelayOff((AlarmId)index)] + debounceMs);
        }

        return Math.Max(longest, settings[SettingField.ButtonDebounceMs]);
    }

    /// <summary>A new try may have left failed in the meantime: what counts is what stands in the scan that obeys the press.</summary>
    private bool ResetLeavesFailed() =>
        IsObeyedWhenQuiet(Button.Reset, QuietSteps) && explored.Core.Phase != Phase.Failed && !explored.Core.Alarms.PumpStoppingStands;

    private bool StartLeavesStopped() =>
        IsObeyedWhenQuiet(Button.Start, SettleSteps)
        && (explored.Core.Phase == Phase.Failed) == explored.Core.Alarms.PumpStoppingStands
        && explored.Core.Phase is Phase.Rest or Phase.Dose or Phase.Failed;

    private bool IsObeyedWhenQuiet(Button button, int quietSteps)
    {
        Inputs quiet = explored.Setup.Alphabet.Quiet;
        explored.UseSettings(false);
        for (int step = 0; step < quietSteps; step++)
            explored.Scan(quiet);
        bool obeyed = false;
        for (int step = 0; step < 2 && !obeyed; step++)
        {
            explored.Inputs.CopyFrom(quiet);
            ControllerInputs.Of(button).Set(explored.Inputs, 1);
            explored.NowMs += (uint)Math.Max(explored.Setup.StepMs, explored.Settings[SettingField.ButtonDebounceMs]);
            explored.Core.Scan(explored.NowMs);
            obeyed = explored.Core.Obeyed(button);
        }

        return obeyed;
    }
}
