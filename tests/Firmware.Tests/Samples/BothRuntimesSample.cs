using System;

namespace LubeController.Firmware.Tests.Samples;

/// <summary>Types and members that the desktop has and the microcontroller has not.</summary>
public static class BothRuntimesSample
{
    public sealed class MissingType
    {
        public Half Held;
    }

    public sealed class MissingMember
    {
        public static bool Blank(string text) => string.IsNullOrWhiteSpace(text);
    }

    public sealed class MissingOverload
    {
        public static string Part(string text, StringComparison kind) => text.IndexOf("a", kind) > 0 ? "b" : "c";
    }

    public sealed class Good
    {
        public int Held;

        public static int Length(string text) => text.Length + text[0];

        public override string ToString() => Held.ToString();
    }
}
