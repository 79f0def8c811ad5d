using System.Linq;
using LubeController.Core;
using LubeController.Files.Reading;

namespace LubeController.Files.Sorts;

/// <summary>The fields at the top of each sort of file, by which the sorts are told apart.</summary>
public static class FileKeys
{
    /// <summary>A bench script.</summary>
    public static KeySet Script { get; } = new(
        "a script", "script", Inheritance.Key, "plant", "settings", "settings-check", "undefined-inputs", "duration", "scan-period", "seed", "scan-bound", "steps", "expect");

    /// <summary>A plant file.</summary>
    public static KeySet Plant { get; } = new(
        "a plant file", "plant", Inheritance.Key, "lubricant", "temperature", "reservoir", "pump", "line", "relief-valve", "vent-valve", "divider", "secondary-dividers", "injectors", "outlets", "cycle-switches", "pressure-switch", "pressure-transmitter", "pressure-gauge", "shaft", "control-supply", "wiring");

    /// <summary>A lubricant file, whatever the kind of lubricant.</summary>
    public static KeySet Lubricant { get; } = new(
        "a lubricant file", "lubricant", Inheritance.Key, "kind", "iso-viscosity-grade", "viscosity-at-40", "second-viscosity", "viscosity-slope", "nlgi-grade", "yield-stress", "consistency", "flow-index", "yield-coefficient", "consistency-coefficient", "base-oil", "density", "expansion", "bulk-modulus");

    /// <summary>A settings file.</summary>
    public static KeySet Settings { get; } = new(
        "a settings file", Enumerable.Range(0, SettingField.Count).Select(field => SettingTable.Spec(field).Name).Prepend("rest-rule").Prepend(Inheritance.Key).Prepend("title"))
    {
        ListedIn = "hil-scripts/schema/settings.schema.json",
    };
}
