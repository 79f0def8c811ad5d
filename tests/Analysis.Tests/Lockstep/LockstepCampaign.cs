using System;
using System.Collections.Generic;
using CsCheck;
using LubeController.Analysis.Lockstep;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>A case in which core and specification differ, and what differs.</summary>
/// <param name="Case">The case, shrunk where that was asked for.</param>
/// <param name="Found">What differs.</param>
/// <param name="Index">Which of the cases drawn showed it, from 0.</param>
internal sealed record LockstepFinding(LockstepCase Case, Disagreement Found, int Index)
{
    /// <summary>Settings, steps and difference for a person.</summary>
    public override string ToString() => $"case {Index}: {Case}\n{Found.What} in step {Found.Step}, scan {Found.Scan}\nspecification: {Found.Specification}";
}

/// <summary>Random lockstep: the same seed draws the same cases on every run and on every machine.</summary>
internal static class LockstepCampaign
{
    /// <summary>Runs cores against the specification on drawn cases.</summary>
    /// <param name="make">Makes a core that has found no valid state, of whatever build.</param>
    /// <param name="cases">How many cases, 1 upward.</param>
    /// <param name="seed">Which cases.</param>
    /// <returns>The first difference, or null.</returns>
    public static Disagreement? Run(Func<SettingsValues, ILockstepCore> make, int cases, ulong seed) =>
        Find((settings, steps) => Analysis.Lockstep.Lockstep.Run(settings, steps, make), cases, seed, shrink: false)?.Found;

    /// <summary>Finds the first case with a difference, and shrinks it to the shortest that can be had by leaving things out.</summary>
    internal static LockstepFinding? Find(
        Func<SettingsValues, IReadOnlyList<LockstepStep>, Disagreement?> run, int cases, ulong seed, bool shrink)
    {
        for (int index = 0; index < cases; index++)
        {
            LockstepCase drawn = LockstepCases.Any.Generate(new PCG((uint)index + 1, seed), null, out _);
            if (run(drawn.Settings, drawn.Steps) is Disagreement found)
            {
                LockstepCase shortest = shrink ? LockstepShrinking.Shrink(drawn, found, run) : drawn;
                return new LockstepFinding(shortest, run(shortest.Settings, shortest.Steps)!, index);
            }
        }

        return null;
    }
}
