using System.Linq;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;

namespace LubeController.Files.Sorts;

/// <summary>The fields at the top of each sort of file, by which the sorts are told apart.</summary>
public static class FileKeys
{
    /// <summary>A bench script.</summary>
    public static KeySet Script { get; } = new(
        "a script", "script", Inheritance.Key, "plant", "settings", "settings-check", "undefined-inputs", "duration", "scan-period", "seed", "scan-bound", "steps", "expect");

    /// <summary>A plant file.</summary>
    public static KeySet Plant { get; } = FieldKeys.OfFile(PlantFields.All);

    /// <summary>A lubricant file, whatever the kind of lubricant.</summary>
    public static KeySet Lubricant { get; } = FieldKeys.OfFile(LubricantFields.All);

    /// <summary>A settings file.</summary>
    public static KeySet Settings { get; } = new(
        "a settings file", Enumerable.Range(0, SettingField.Count).Select(field => SettingTable.Spec(field).Name).Prepend("rest-rule").Prepend(Inheritance.Key).Prepend("title"))
    {
        ListedIn = "hil-scripts/schema/settings.schema.json",
    };
}
