using LubeController.Plant.Numbers;

namespace LubeController.Scripts.Steps.Drawing;

/// <summary>
/// Draws that depend on nothing but the seed, the step and what is drawn, so that another step more or less changes none
/// of them: FNV-1a over the names, from memory, mixed as the plant's irregularities are.
/// </summary>
internal static class SeededDraw
{
    /// <summary>Evenly spread, 0 up to, not including, 1.</summary>
    /// <param name="seed">The run's seed.</param>
    /// <param name="step">The step's name, or its place where it has none.</param>
    /// <param name="key">What is drawn, for instance <c>magnitude</c>.</param>
    public static double Fraction(ulong seed, string step, string key)
    {
        ulong names = Hash(Hash(14695981039346656037, step), "/" + key);
        return SeededGenerator.Fraction(SeededGenerator.Mix(unchecked(SeededGenerator.Mix(seed) + names)));
    }

    private static ulong Hash(ulong hash, string text)
    {
        foreach (char letter in text)
            hash = unchecked((hash ^ letter) * 1099511628211);
        return hash;
    }
}
