using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Specification;
using LubeController.Core;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>
/// Makes a case with a difference as short as can be by leaving out: what follows the difference, steps, scans, inputs, and
/// settings that are not at their presets; equal neighbours become one. Deterministic; a difference of any sort counts.
/// </summary>
internal static class LockstepShrinking
{
    public static LockstepCase Shrink(
        LockstepCase drawn, Disagreement found, Func<SettingsValues, IReadOnlyList<LockstepStep>, Disagreement?> run)
    {
        LockstepCase best = Cut(drawn, found);

        // After each success it goes on where it stands, and ends with a whole round in which nothing can be left out.
        int from = 0;
        while (true)
        {
            int at = from;
            Disagreement? still = null;
            foreach (LockstepCase simpler in Simpler(best).Skip(from))
            {
                still = Try(simpler, run);
                if (still is not null)
                {
                    best = Cut(simpler, still);
                    break;
                }

                at++;
            }

            if (still is null && from == 0)
                return best;
            from = still is null ? 0 : at;
        }
    }

    /// <summary>Settings that are refused are no simpler case.</summary>
    private static Disagreement? Try(LockstepCase simpler, Func<SettingsValues, IReadOnlyList<LockstepStep>, Disagreement?> run)
    {
        try
        {
            return run(simpler.Settings, simpler.Steps);
        }
        catch (ArgumentException)
        {
            return null;
        }
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

        for (int index = 1; index < count; index++)
        {
            LockstepStep first = one.Steps[index - 1];
            LockstepStep second = one.Steps[index];
            if (second.Deed == LockstepDeed.None && first.Inputs == second.Inputs && first.ElapsedMs == second.ElapsedMs)
                yield return one with { Steps = [.. one.Steps.Take(index - 1), first with { Scans = first.Scans + second.Scans }, .. one.Steps.Skip(index + 1)] };
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
