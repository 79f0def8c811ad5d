using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads a range from which the seed draws.</summary>
internal static class DrawReader
{
    /// <summary>Whether a range stands where a single quantity might.</summary>
    public static bool Stands(MapReader step, string key) => step.Map[key] is MapNode;

    /// <summary>The range under a field, in the unit of the limits; null where a problem was added.</summary>
    /// <param name="step">The step.</param>
    /// <param name="key">The field.</param>
    /// <param name="limits">What may be drawn at all.</param>
    public static DrawRange? Read(MapReader step, string key, QuantityRange limits)
    {
        if (step.Group(key, ScriptKeys.Draw) is not { } group)
            return null;
        foreach (string end in (string[])["from", "to"])
        {
            if (!group.Has(end))
                group.Missing(end, $"write a value from {limits}");
        }

        Quantity? from = group.Quantity("from", limits);
        Quantity? to = group.Quantity("to", limits);
        int? spread = group.Has("spread") ? group.Choice("spread", ScriptKeys.Spreads) : (int)DrawSpread.Even;
        if (from is not { } low || to is not { } high || spread is not { } how)
            return null;
        if (high.Si <= low.Si)
        {
            group.Problems.Add(group.Map["to"]!, $"the range ends where it begins or before, at {low}", "write a greater value, or a single one in place of the range");
            return null;
        }

        if ((DrawSpread)how == DrawSpread.Log && low.Si <= 0)
        {
            group.Problems.Add(group.Map["from"]!, "a range spread by ratios begins above zero", "write a value above zero, or 'spread: even'");
            return null;
        }

        UnitFamily family = limits.Family;
        return new DrawRange(family.FromSi(low.Si, limits.Unit), family.FromSi(high.Si, limits.Unit), (DrawSpread)how, limits.Unit, family);
    }
}
