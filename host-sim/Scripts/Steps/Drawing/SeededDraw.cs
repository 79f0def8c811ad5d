namespace LubeController.Scripts.Steps.Drawing;

/// <summary>
/// Draws that depend on nothing but the seed, the step and what is drawn, so that another step more or less changes none
/// of them: FNV-1a over the names, mixed by the finaliser of SplitMix64 (both from memory).
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
        return (Mix(unchecked(Mix(seed) + names)) >> 11) * (1.0 / (1UL << 53));
    }

    private static ulong Hash(ulong hash, string text)
    {
        foreach (char letter in text)
            hash = unchecked((hash ^ letter) * 1099511628211);
        return hash;
    }

    private static ulong Mix(ulong value)
    {
        unchecked
        {
            value += 0x9E3779B97F4A7C15;
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
            return value ^ (value >> 31);
        }
    }
}
