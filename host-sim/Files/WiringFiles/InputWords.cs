using System.Collections.Generic;

namespace LubeController.Files.WiringFiles;

/// <summary>The words for digital inputs by IEC 61131-2.</summary>
public static class InputWords
{
    /// <summary>What an input makes of its undefined zone, by value.</summary>
    public static IReadOnlyList<string> Policies { get; } = ["low", "high", "hold", "seeded"];
}
