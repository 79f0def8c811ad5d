namespace LubeController.Plant;

/// <summary>
/// SplitMix64 (Steele, Lea and Flood 2014, from memory): a generator whose sequence depends on its seed alone.
/// </summary>
internal sealed class SeededGenerator
{
    private ulong _state;

    internal SeededGenerator(ulong seed) => _state = seed;

    internal ulong State => _state;

    internal ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            ulong z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Evenly spread, 0 up to, not including, 1.</summary>
    internal double NextFraction() => (Next() >> 11) * (1.0 / (1UL << 53));
}
