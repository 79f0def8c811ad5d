using System;

namespace LubeController.Analysis.Lockstep;

/// <summary>One value on both sides.</summary>
internal static class Difference
{
    /// <summary>What differs, with both values, or null.</summary>
    internal static string? Between<T>(string what, T core, T specification)
        where T : IEquatable<T> => core.Equals(specification) ? null : $"{what}: core {core}, specification {specification}";
}
