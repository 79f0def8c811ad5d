using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>
/// Inside a room too, arrows go one way: no namespace uses another that leads back to it. Otherwise neither can be read,
/// tested or moved without the other.
/// </summary>
public sealed class NamespaceCyclesRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository) => repository.NamespaceUses
        .OrderBy(one => one.Key, StringComparer.Ordinal)
        .SelectMany(one => Cycles(one.Value).Select(cycle => $"{one.Key}: {Describe(cycle)}; let one of these uses go the other way"));

    /// <summary>The shortest cycle through each namespace that lies on one, each cycle once.</summary>
    private static IEnumerable<IReadOnlyList<NamespaceUse>> Cycles(IReadOnlyList<NamespaceUse> uses)
    {
        ILookup<string, NamespaceUse> from = uses.ToLookup(use => use.From);
        var told = new HashSet<string>();
        foreach (string name in uses.Select(use => use.From).Distinct().Order(StringComparer.Ordinal))
        {
            if (!told.Contains(name) && ShortestBackTo(name, from) is { } cycle)
            {
                told.UnionWith(cycle.Select(use => use.From));
                yield return cycle;
            }
        }
    }

    private static List<NamespaceUse>? ShortestBackTo(string start, ILookup<string, NamespaceUse> from)
    {
        var cameBy = new Dictionary<string, NamespaceUse>();
        var waiting = new Queue<string>([start]);
        while (waiting.TryDequeue(out string? at))
        {
            foreach (NamespaceUse use in from[at].Where(use => cameBy.TryAdd(use.To, use)))
            {
                if (use.To == start)
                    return WayTo(start, cameBy);
                waiting.Enqueue(use.To);
            }
        }

        return null;
    }

    private static List<NamespaceUse> WayTo(string start, Dictionary<string, NamespaceUse> cameBy)
    {
        var way = new List<NamespaceUse>();
        string at = start;
        do
        {
            way.Insert(0, cameBy[at]);
            at = way[0].From;
        }
        while (at != start);
        return way;
    }

    private static string Describe(IReadOnlyList<NamespaceUse> cycle) =>
        string.Join(", ", cycle.Select(use => $"{use.From} uses {use.To} ({use.Where})"));
}
