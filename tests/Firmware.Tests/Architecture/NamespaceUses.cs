using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>
/// Which namespaces of an assembly use which. The built code shows every type that is named in it, but not constants, whose
/// values alone are compiled in; the <c>using</c> directives show those.
/// </summary>
public static partial class NamespaceUses
{
    /// <summary>What the built code names.</summary>
    public static IEnumerable<NamespaceUse> InCode(ModuleDefinition module) => Mention.AllIn(module)
        .Where(mention => mention.Type.Scope == module)
        .Select(mention => new NamespaceUse(NamespaceOf(mention.Owner), NamespaceOf(mention.Type), $"{mention.Owner.Name} names {mention.Type.Name}"))
        .Where(use => use.From.Length > 0 && use.To.Length > 0 && use.From != use.To)
        .DistinctBy(use => (use.From, use.To));

    /// <summary>What source files declare to use.</summary>
    /// <param name="sources">Text of each file, by path.</param>
    public static IEnumerable<NamespaceUse> InSources(IReadOnlyDictionary<string, string> sources)
    {
        Dictionary<string, string> own = sources.ToDictionary(file => file.Key, file => Namespace().Match(file.Value).Groups["name"].Value);
        var all = own.Values.ToHashSet();
        return sources
            .SelectMany(file => Using().Matches(file.Value).Select(match => new NamespaceUse(own[file.Key], match.Groups["name"].Value, file.Key)))
            .Where(use => use.From.Length > 0 && use.From != use.To && all.Contains(use.To))
            .DistinctBy(use => (use.From, use.To));
    }

    private static string NamespaceOf(TypeReference type)
    {
        while (type.DeclaringType != null)
            type = type.DeclaringType;
        return type.Namespace.StartsWith("LubeController", StringComparison.Ordinal) ? type.Namespace : "";
    }

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"^using (?:static |\w+ = )?(?<name>LubeController[\w.]*);", RegexOptions.Multiline)]
    private static partial Regex Using();
}
