using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Specification;
using LubeController.Core;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>
/// Makes a case with a difference as short as can be by leaving out: what follows the difference, steps, scans, inputs, and
/// settings that are not at their presets. Deterministic; a difference of any sort counts.
/// </summary>
internal static class LockstepShrinking
{
    public static LockstepCase Shrink(
        LockstepCase drawn, Disagreement found, Func<SettingsValues, IReadOnlyList<LockstepStep>, Disagreement?> run)
    {
        LockstepCase best = Cut(drawn, found);
        bool shorter = true;
        while (shorter)
        {
            shorter = false;
            foreach (LockstepCase simpler in Simpler(best))
            {
                Disagreement? still;
                try
                {
                    still = run(simpler.Settings, simpler.Steps);
                }
                catch (ArgumentException)
                {
                    // Settings that are refused are no simpler case.
                    continue;
                }

                if (still is null)
                    continue;
                best = Cut(simpler, still);
                shorter = true;
                break;
            }
        }

        return best;
    }

    /// <summary>Nothing after the difference matters.</summary>
    private static LockstepCase Cut(LockstepCase one, Disagreement found) =>
        one with { Steps = [.. one.Steps.Take(found.Step), one.Steps[found.Step] with { Scans = found.Scan + 1 }] };

    private static IEnumerable<LockstepCase> Simpler(LockstepCase one)
    {
        int count = one.Steps.Count;
        for (int length = count / 2; length >= 1; length /= 2)
        {
            for (int from = 0; from + length <= count; from += length)
                yield return one with { Steps = [.. one.Steps.Take(from), .. one.Steps.Skip(from + length)] };
        }

        for (int index = 0; index < count; index++)
        {
            foreach (LockstepStep simpler in Simpler(one.Steps[index]))
            {
                LockstepStep[] steps = [.. one.Steps];
                steps[index] = simpler;
                yield return one with { Steps = steps };
            }
        }

        for (int field = 0; field < SettingField.Count; field++)
        {
            int preset = LockstepSettings.LeftOut.Any(left => left.Field == field) ? 0 : SettingTable.Spec(field).Preset;
            if (one.Settings[field] != preset)
                yield return one with { Settings = one.Settings.With(field, preset) };
        }
    }

    private static IEnumerable<LockstepStep> Simpler(LockstepStep step)
    {
        if (step.Deed != LockstepDeed.None)
            yield return step with { Deed = LockstepDeed.None };
        if (step.Scans > 1)
        {
            yield return step with { Scans = 1 };
            yield return step with { Scans = step.Scans / 2 };
            yield return step with { Scans = step.Scans - 1 };
        }

        if (step.ElapsedMs is not (10 or 0))
            yield return step with { ElapsedMs = 10 };
        LockstepInputs quiet = new();
        LockstepInputs seen = step.Inputs;
        LockstepInputs[] simpler =
        [
            quiet,
            seen with { CycleSwitches = 0 }, seen with { ShaftPulses = 0, ShaftPulseAgeMs = 0 }, seen with { PumpRevolutions = 0 },
            seen with { MachineRunning = true }, seen with { LevelLow = false }, seen with { LevelEmpty = false },
            seen with { PressureSwitch = false }, seen with { PumpOverload = false }, seen with { Stop = false },
            seen with { Pressed = Buttons.None }, seen with { ScanLate = false }, seen with { SupplyMv = quiet.SupplyMv },
            seen with { PressureMbar = 0 }, seen with { TemperatureDeciC = quiet.TemperatureDeciC },
        ];
        foreach (LockstepInputs inputs in simpler)
        {
            if (inputs != seen)
                yield return step with { Inputs = inputs };
        }
    }
}
