using System.Linq;
using LubeController.Files.Reading;
using LubeController.Plant.Fields;

namespace LubeController.Files.Sorts;

/// <summary>The fields that a group of a file may have, from the declaration of the description.</summary>
public static class FieldKeys
{
    /// <summary>The field by which a group names the file that it overrides.</summary>
    public const string File = "file";

    /// <summary>The fields of a group; of a group that is a file of its own, what stands in another file in its place.</summary>
    public static KeySet Of(FieldSet set) => set.IsFile
        ? new KeySet("a plant's lubricant", set.Keys.Except(["lubricant", "kind"]).Prepend(File))
        : new KeySet(set.Name, set.Keys);

    /// <summary>The fields at the top of a file, which may be based on another one.</summary>
    public static KeySet OfFile(FieldSet set) => new(set.Name, [set.Keys[0], Inheritance.Key, .. set.Keys.Skip(1)]);
}
