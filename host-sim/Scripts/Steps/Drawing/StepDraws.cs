using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Scripts.Expectations;

namespace LubeController.Scripts.Steps.Drawing;

/// <summary>Replaces whatever a script leaves to its seed by what this run draws.</summary>
public static class StepDraws
{
    private const long UsInMs = 1000;

    /// <summary>The steps with every draw made; a step that leaves nothing to the seed stays as it is.</summary>
    /// <param name="steps">The steps of a script.</param>
    /// <param name="seed">The run's seed.</param>
    public static IReadOnlyList<Step> Make(IReadOnlyList<Step> steps, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return [.. steps.Select(step => Draw(step, seed))];
    }

    private static Step Draw(Step step, ulong seed)
    {
        var told = new List<string>();
        StepTime time = step.Time is AtDrawnTime at ? DrawTime(at, step, seed, told) : step.Time;
        StepAction action = step.Action is SetFault fault ? DrawFault(fault, step, seed, told) : step.Action;
        return told.Count == 0 ? step : step with { Time = time, Action = action, Drawn = string.Join("; ", told) };
    }

    private static AtTime DrawTime(AtDrawnTime at, Step step, ulong seed, List<string> told)
    {
        double ms = at.RangeMs.At(SeededDraw.Fraction(seed, step.Label, "at"));
        long us = (long)Math.Round(ms, MidpointRounding.AwayFromZero) * UsInMs;
        told.Add($"at {TimeText.Of(us)} (from {TimeText.Of(at.RangeMs.From * UsInMs)} to {TimeText.Of(at.RangeMs.To * UsInMs)})");
        return new AtTime(us);
    }

    private static SetFault DrawFault(SetFault fault, Step step, ulong seed, List<string> told)
    {
        if (fault.AnyPart)
        {
            IReadOnlyList<string> parts = fault.Kind.Parts;
            fault = fault with { AnyPart = false, Part = parts[(int)(SeededDraw.Fraction(seed, step.Label, "part") * parts.Count)] };
            told.Add($"part {fault.Part} (one of {parts.Count})");
        }

        if (fault.Draw is { } range)
        {
            double number = range.At(SeededDraw.Fraction(seed, step.Label, "magnitude"));
            fault = fault with { Draw = null, MagnitudeSi = range.Family.ToSi(number, range.Unit) };
            told.Add($"magnitude {new Quantity(number, range.Unit, range.Family)} (from {range})");
        }

        return fault;
    }
}
