using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>The first difference between core and specification.</summary>
/// <param name="Step">Index of the step, from 0.</param>
/// <param name="Scan">Index of the scan in it, from 0.</param>
/// <param name="What">What differs, and both values.</param>
/// <param name="Specification">The specification's state in one line.</param>
public sealed record Disagreement(int Step, int Scan, string What, string Specification)
{
    /// <summary>The sequence up to it, step by step, for a person.</summary>
    public string Tell(IReadOnlyList<LockstepStep> steps) => string.Create(
        CultureInfo.InvariantCulture,
        $"In step {Step}, scan {Scan}: {What}\n{string.Join("\n", steps.Take(Step + 1).Select((step, index) => $"  {index}: {step}"))}\n  specification: {Specification}");
}

/// <summary>Runs core and specification in lockstep.</summary>
public static class Lockstep
{
    /// <summary>Runs the deployed core against the specification.</summary>
    /// <param name="settings">Settings of both, which the core accepts.</param>
    /// <param name="steps">What both see.</param>
    /// <returns>The first difference, or null.</returns>
    /// <exception cref="ArgumentException">The specification cannot express the settings; the message names the one.</exception>
    public static Disagreement? Run(SettingsValues settings, IReadOnlyList<LockstepStep> steps) =>
        Run(settings, steps, values => new DeployedCore(values));

    /// <summary>Runs a core against the specification.</summary>
    /// <param name="settings">Settings of both, which the deployed core accepts.</param>
    /// <param name="steps">What both see.</param>
    /// <param name="make">Makes a core that has found no valid state.</param>
    /// <returns>The first difference, or null.</returns>
    /// <exception cref="ArgumentException">The specification cannot express the settings; the message names the one.</exception>
    public static Disagreement? Run(SettingsValues settings, IReadOnlyList<LockstepStep> steps, Func<SettingsValues, ILockstepCore> make) =>
        Run(settings, steps, make, null, SpecMisreadings.None, LockstepAllowances.All);

    internal static Disagreement? Run(
        SettingsValues settings, IReadOnlyList<LockstepStep> steps, Func<SettingsValues, ILockstepCore> make,
        Func<SpecSettings, SpecSettings>? alter, SpecMisreadings misread, IReadOnlySet<LockstepAllowance> allowed)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(make);
        var pair = new LockstepPair(settings, make, alter, misread, allowed);
        for (int index = 0; index < steps.Count; index++)
        {
            LockstepStep step = steps[index];
            pair.Do(step);
            for (int scan = 0; scan < step.Scans; scan++)
            {
                if (pair.Scan(step.Inputs, step.ElapsedMs) is string what)
                    return new Disagreement(index, scan, what, pair.SpecText);
            }
        }

        return null;
    }
}
