using System.Numerics;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What must hold after every scan.</summary>
internal sealed class ScanCheck(ExploredCore explored)
{
    private readonly int _doseEnding = explored.Settings.DoseEndingIndex;
    private readonly bool _byPressure = explored.Settings.DoseMode == DoseMode.Pressure;

    /// <summary>The properties violated, one bit each.</summary>
    /// <param name="before">The phase before the scan.</param>
    /// <param name="standingBefore">The alarms that stood before it.</param>
    public int Violated(Phase before, int standingBefore)
    {
        Controller core = explored.Core;
        int standing = core.Alarms.Standing;
        int stopping = AlarmFacts.StoppingOf(standing, core, _doseEnding);
        bool failure = AlarmFacts.FailuresOf(standing, core, _doseEnding) != 0;
        int violated = ViolatedByPump(before, standing, stopping);
        if (explored.Outputs.HealthyRelay && failure)
            violated |= CoreProperty.RelayTellsFailure.Bit();
        if (core.Phase == Phase.Failed && stopping == 0)
            violated |= CoreProperty.FailedHasCause.Bit();
        if (core.Phase == Phase.Dose && before == Phase.Dose && (stopping & ~standingBefore) != 0)
            violated |= CoreProperty.DoseEnds.Bit();
        if ((explored.SettingsAreRefused && !core.Alarms.Stands(AlarmId.SettingsInvalid)) || RuleFaultIsSilent())
            violated |= CoreProperty.CauseIsAlarmed.Bit();
        if (core.Phase == Phase.OutputTest ? explored.Outputs.Pump : !OutputsFollow(standing, failure))
            violated |= CoreProperty.OutputsFollow.Bit();
        return violated;
    }

    private int ViolatedByPump(Phase before, int standing, int stopping)
    {
        if (!explored.Outputs.Pump)
            return 0;
        int violated = 0;
        if (AlarmFacts.InterlocksOf(standing) != 0)
            violated |= CoreProperty.PumpOffUnderInterlock.Bit();
        if (explored.Inputs.Stop || AlarmFacts.HoldingOf(standing) != 0)
            violated |= CoreProperty.PumpOffOnStop.Bit();
        // A new try that is due in the scan of a reset is no doing of the reset: the failure stands on.
        bool trying = explored.Settings[SettingField.NewTryDelayMs] > 0 && stopping != 0;
        if (before == Phase.Failed && !trying && explored.Core.Obeyed(Button.Reset))
            violated |= CoreProperty.NoStartByReset.Bit();
        return violated;
    }

    /// <summary>Whether the rule, asked as the core asks it, wants a longer rest than it may, and no alarm says so.</summary>
    private bool RuleFaultIsSilent()
    {
        Controller core = explored.Core;
        if (explored.Rule == null || explored.Settings.RestMode != RestMode.Rule || core.DosePending || core.Alarms.Stands(AlarmId.RuleFault))
            return false;
        int remainingMs = explored.Rule.RemainingMs(explored.Inputs);
        return remainingMs < 0 || remainingMs > explored.Settings[SettingField.RuleLongestRestMs];
    }

    private bool OutputsFollow(int standing, bool failure)
    {
        Controller core = explored.Core;
        Phase phase = core.Phase;
        bool pump = (phase == Phase.Dose && (!_byPressure || core.DoseStep is DoseStep.Pressurise or DoseStep.Hold)) || phase == Phase.Prime;
        bool holding = AlarmFacts.HoldingOf(standing) != 0;
        int shown = ShownOf(standing);
        bool warning = phase is Phase.Stopped or Phase.Prime || (shown & ~AlarmFacts.FailuresOf(shown, core, _doseEnding)) != 0;
        return explored.Outputs.Pump == (pump && !holding)
            && explored.Outputs.HealthyRelay == !failure
            && explored.Outputs.Warning == warning
            && (core.Alarms.AnyUnseen || explored.Outputs.Lamp == (shown != 0));
    }

    private int ShownOf(int standing)
    {
        int shown = 0;
        for (int left = standing; left != 0; left &= left - 1)
        {
            int index = BitOperations.TrailingZeroCount(left);
            if (explored.Core.Alarms.StateOf((AlarmId)index) is not (AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService))
                shown |= 1 << index;
        }

        return shown;
    }
}
