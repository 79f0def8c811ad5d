using LubeController.Files.Reading;

namespace LubeController.Files.Quantities;

/// <summary>Reads quantities from the fields of a group.</summary>
public static class QuantityFields
{
    /// <summary>The quantity of a field within a range, or null where it is absent or a problem was added.</summary>
    public static Quantity? Quantity(this MapReader group, string key, QuantityRange range)
    {
        if (group.Single(key) is not { } node)
            return null;
        if (!QuantityReader.TryRead(node.Text, range.Family, out Quantity quantity, out string message, out string remedy))
        {
            group.Problems.Add(node, message, remedy);
            return null;
        }

        if (range.Holds(quantity))
            return quantity;
        group.Problems.Add(node, $"{range.Family.Name} outside its range", $"write a value from {range}");
        return null;
    }

    /// <summary>The SI value of a field that must be there; not-a-number where a problem was added.</summary>
    public static double Need(this MapReader group, string key, QuantityRange range)
    {
        if (!group.Has(key))
            group.Missing(key, $"write for instance '{key}: {range.Family.Example}'");
        return group.Quantity(key, range)?.Si ?? double.NaN;
    }
}
