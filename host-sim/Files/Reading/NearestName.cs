using System;
using System.Collections.Generic;

namespace LubeController.Files.Reading;

/// <summary>Finds what a person probably meant.</summary>
public static class NearestName
{
    private const int LongestCompared = 64;
    private const int MostNamed = 12;

    /// <summary>The known name that takes fewest edits to reach, or null where none is near.</summary>
    public static string? Of(string text, IEnumerable<string> known)
    {
        string? best = null;
        int bestEdits = Math.Max(2, Math.Min(text.Length, LongestCompared) / 2);
        foreach (string name in known)
        {
            int edits = Edits(text.ToLowerInvariant(), name.ToLowerInvariant());
            if (edits < bestEdits)
            {
                best = name;
                bestEdits = edits;
            }
        }

        return best;
    }

    /// <summary>A remedy naming the nearest known name, or where none is near, the first dozen of them.</summary>
    /// <param name="text">What was found.</param>
    /// <param name="known">Every name that would do.</param>
    /// <param name="listedIn">Where all of them are told, or empty.</param>
    public static string Remedy(string text, IReadOnlyCollection<string> known, string listedIn = "")
    {
        string? nearest = Of(text, known);
        if (nearest != null)
            return $"did you mean '{nearest}'?";
        return $"known: {Some(known)}{(listedIn.Length > 0 && known.Count > MostNamed ? $"; all of them: {listedIn}" : "")}";
    }

    /// <summary>The first dozen names, separated by commas.</summary>
    public static string Some(IReadOnlyCollection<string> known)
    {
        var some = new List<string>();
        foreach (string name in known)
        {
            if (some.Count == MostNamed)
            {
                some.Add($"and {known.Count - MostNamed} more");
                break;
            }

            some.Add(name);
        }

        return string.Join(", ", some);
    }

    /// <summary>Insertions, deletions, replacements and swaps of neighbours (optimal string alignment).</summary>
    private static int Edits(string first, string second)
    {
        if (first.Length > LongestCompared || second.Length > LongestCompared)
            return int.MaxValue;
        var before = new int[second.Length + 1];
        var last = new int[second.Length + 1];
        var current = new int[second.Length + 1];
        for (int column = 0; column <= second.Length; column++)
            last[column] = column;
        for (int row = 1; row <= first.Length; row++)
        {
            current[0] = row;
            for (int column = 1; column <= second.Length; column++)
            {
                bool same = first[row - 1] == second[column - 1];
                int edits = Math.Min(Math.Min(last[column], current[column - 1]) + 1, last[column - 1] + (same ? 0 : 1));
                if (row > 1 && column > 1 && first[row - 1] == second[column - 2] && first[row - 2] == second[column - 1])
                    edits = Math.Min(edits, before[column - 2] + 1);
                current[column] = edits;
            }

            (before, last, current) = (last, current, before);
        }

        return last[second.Length];
    }
}
