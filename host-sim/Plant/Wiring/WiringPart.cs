using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>A kind of part of a wiring, or two parts of one kind that touch.</summary>
/// <param name="words">What a fault's part name must name.</param>
/// <param name="single">Names of the single parts, in the order of the description.</param>
/// <param name="paired">Whether a fault names two of them.</param>
internal sealed class WiringPart(string words, Func<SupervisoryWiringDescription, IEnumerable<string>> single, bool paired = false) : FaultPart<FaultedWiring>(words)
{
    // Stands between the two parts of a pair.
    private const char Bridge = '+';

    /// <summary>The names that a fault accepts in a wiring.</summary>
    internal IReadOnlyList<string> NamesIn(SupervisoryWiringDescription wiring)
    {
        string[] names = [.. single(wiring)];
        return paired ? [.. names.SelectMany((name, index) => names.Skip(index + 1).Select(other => name + Bridge + other))] : names;
    }

    /// <summary>Where the part of a name is.</summary>
    /// <exception cref="ArgumentException">No such part.</exception>
    internal WiringPlace PlaceIn(SupervisoryWiringDescription wiring, string name)
    {
        string[] names = [.. single(wiring)];
        string[] ends = paired ? name.Split(Bridge) : [name];
        return new WiringPlace(IndexOf(names, ends[0]), IndexOf(names, ends[^1]));
    }

    private static int IndexOf(string[] names, string name) => Array.IndexOf(names, name) is >= 0 and var index
        ? index
        : throw new ArgumentException($"the wiring has no such part '{name}'", nameof(name));
}
