namespace LubeController.Plant.Numbers;

/// <summary>
/// SplitMix64 (Steele, Lea and Flood 2014, from memory): a generator whose sequence depends on its seed alone.
/// </summary>
/// <param name="seed">Any number.</param>
public sealed class SeededGenerator(ulong seed)
{
    private const ulong Step = 0x9E3779B97F4A7C15;

    internal ulong State { get; private set; } = seed;

    /// <summary>The number that the generator gives in a state: mixes any number so that neighbours have nothing in common.</summary>
    public static ulong Mix(ulong state)
    {
        unchecked
        {
            state += Step;
            state = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
            state = (state ^ (state >> 27)) * 0x94D049BB133111EB;
            return state ^ (state >> 31);
        }
    }

    /// <summary>The fraction for which a mixed number stands: 0 up to, not including, 1.</summary>
    public static double Fraction(ulong mixed) => (mixed >> 11) * (1.0 / (1UL << 53));

    /// <summary>The next number.</summary>
    public ulong Next()
    {
        ulong next = Mix(State);
        State = unchecked(State + Step);
        return next;
    }

    /// <summary>Evenly spread, 0 up to, not including, 1.</summary>
    public double NextFraction() => Fraction(Next());
}
