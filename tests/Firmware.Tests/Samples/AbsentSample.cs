using System;
using System.Collections;
using System.Linq;
using System.Text;
using System.Threading.Tasks;

namespace LubeController.Firmware.Tests.Samples;

/// <summary>What the microcontroller's library and language do not have.</summary>
public static class AbsentSample
{
    public sealed class UsesMath
    {
        public static int Most(int left, int right) => Math.Max(left, right);
    }

    public sealed class UsesStringBuilder
    {
        public static int Length() => new StringBuilder().Length;
    }

    public sealed class UsesHashtable
    {
        public Hashtable? Held;
    }

    public sealed class UsesEnvironment
    {
        public static string Line() => Environment.NewLine;
    }

    public sealed class UsesEncoding
    {
        public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
    }

    public sealed class UsesLinq
    {
        public static int Sum(int[] values) => values.Sum();
    }

    public sealed class UsesTuple
    {
        public (int First, int Second) Held;
    }

    public sealed class UsesNullableValue
    {
        public int? Held;
    }

    public sealed class VolatileField
    {
        public volatile int Held;

        public int Read() => Held;
    }

    public sealed class Yields
    {
        public static IEnumerable Values()
        {
            yield return "a";
        }
    }

    public sealed class Awaits
    {
        public static async Task Wait() => await Task.Yield();
    }

    public sealed record RecordClass(int Value);

    public record struct RecordStruct(int Value);

    public sealed class Good
    {
        public int Held;

        public int Most(int other) => Held > other ? Held : other;

        public string Name() => "a" + Held;

        public override string ToString() => Name();
    }
}
