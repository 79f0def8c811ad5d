using System;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>Parts of the desktop library that the microcontroller does not have.</summary>
public sealed class AbsentTypesRule : MentionRule
{
    private static readonly (string Prefix, string What, string Remedy)[] Absent =
    [
        ("System.Math", "Math", "Write the comparison out"),
        ("System.Text.StringBuilder", "StringBuilder", "Firmware makes no text; the bench does"),
        ("System.Text.", "Encoding", "Firmware makes no text; the bench does"),
        ("System.Collections.Hashtable", "Hashtable", "Use an array and an index"),
        ("System.Environment", "Environment", "Take what is needed through the board interface"),
        ("System.Threading.Volatile", "volatile", "Let one thread own the data"),
        ("System.Threading.Tasks.", "async", "Keep the state in fields and advance it each scan"),
        ("System.Linq.", "LINQ", "Write the loop out"),
        ("System.ValueTuple", "tuple", "Make a class with named fields, once"),
        ("System.Tuple", "tuple", "Make a class with named fields, once"),
        ("System.Nullable", "nullable value", "Keep the value and a bool beside it"),
    ];

    /// <inheritdoc/>
    protected override (string Found, string Remedy)? Judge(TypeReference type)
    {
        if (type is TypeSpecification)
            return null;
        foreach ((string prefix, string what, string remedy) in Absent)
        {
            if (Matches(type.FullName, prefix))
                return ($"{what}, absent there ({type.FullName})", remedy);
        }

        return null;
    }

    private static bool Matches(string name, string prefix)
    {
        if (!name.StartsWith(prefix, StringComparison.Ordinal))
            return false;
        return prefix[^1] == '.' || name.Length == prefix.Length || name[prefix.Length] is '`' or '/' || name == prefix + "F";
    }
}
