using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;

namespace LubeController.Files.LubricantFiles;

/// <summary>The fields of a lubricant file, group by group.</summary>
public static class LubricantKeys
{
    private static readonly string[] Head = ["lubricant", Inheritance.Key, "kind"];
    private static readonly string[] Common = ["density", "expansion", "bulk-modulus"];
    private static readonly string[] ViscosityFields = ["viscosity-at-40", "second-viscosity", "viscosity-slope"];
    private static readonly string[] OilFields = ["iso-viscosity-grade", .. ViscosityFields];
    private static readonly string[] GreaseFields =
        ["nlgi-grade", "yield-stress", "consistency", "flow-index", "yield-coefficient", "consistency-coefficient", "base-oil"];

    /// <summary>The file of an oil.</summary>
    public static KeySet Oil { get; } = new("an oil", [.. Head, .. OilFields, .. Common]);

    /// <summary>The file of a grease.</summary>
    public static KeySet Grease { get; } = new("a grease", [.. Head, .. GreaseFields, .. Common]);

    /// <summary>What a plant file says of its lubricant: the file, and what differs from it.</summary>
    public static KeySet InPlant { get; } = new("a plant's lubricant", ["file", .. FileKeys.Lubricant.Keys.Except(Head)]);

    /// <summary>A value with its source.</summary>
    public static KeySet Sourced { get; } = new("a sourced value", "value", "confidence", "source");

    /// <summary>A second point of the viscosity over temperature.</summary>
    public static KeySet Second { get; } = new("a second viscosity", "temperature", "value", "confidence", "source");

    /// <summary>The base oil of a grease.</summary>
    public static KeySet BaseOil { get; } = new("a base oil", ViscosityFields);

    /// <summary>Each group by the place it has in the file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlace { get; } = Places("", FileKeys.Lubricant);

    /// <summary>The same for a plant file, from its field <c>lubricant</c>.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlaceInPlant { get; } = Places("lubricant", InPlant);

    private static Dictionary<string, KeySet> Places(string top, KeySet group)
    {
        string prefix = top.Length == 0 ? "" : top + ".";
        var places = new Dictionary<string, KeySet> { [top] = group, [prefix + "base-oil"] = BaseOil };
        foreach (string key in (string[])[.. Common, .. ViscosityFields, .. GreaseFields.Except(["nlgi-grade", "base-oil"])])
            places.Add(prefix + key, key == "second-viscosity" ? Second : Sourced);
        foreach (string key in ViscosityFields)
            places.Add($"{prefix}base-oil.{key}", key == "second-viscosity" ? Second : Sourced);
        return places;
    }
}
