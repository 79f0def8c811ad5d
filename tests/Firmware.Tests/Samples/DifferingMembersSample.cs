#define DEBUG
using System;
using System.Diagnostics;

namespace LubeController.Firmware.Tests.Samples
{
    /// <summary>Members that the two runtimes do not share.</summary>
    public static class DifferingMembersSample
    {
        public sealed class WritesDebug
        {
            public static void Tell() => Debug.WriteLine("a");
        }

        public sealed class HoldsSpanByte
        {
            public SpanByte? Held;
        }

        public sealed class Hours
        {
            public static void Tell() => GC.KeepAlive(TimeSpan.FromHours(1));
        }

        public sealed class Days
        {
            public static void Tell() => GC.KeepAlive(TimeSpan.FromDays(1));
        }

        public sealed class UnixTime
        {
            public static void Tell() => GC.KeepAlive(DateTime.UnixEpoch);
        }

        public sealed class Upper
        {
            public static char Of(char letter) => char.ToUpper(letter);
        }

        public sealed class Lower
        {
            public static char Of(char letter) => char.ToLower(letter);
        }

        public sealed class Endian
        {
            public static bool Little => BitConverter.IsLittleEndian;
        }

        public sealed class InitSetter
        {
            public int Value { get; init; }
        }

        public sealed class ForeignInitSetter
        {
            public static object Make() => new System.Text.Json.Schema.JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true };
        }

        public sealed class Good
        {
            internal int Hidden { get; init; }

            public int Plain { get; set; }

            public static void Tell() => GC.KeepAlive(TimeSpan.FromTicks(1));
        }
    }
}

namespace System
{
    /// <summary>Stands for the microcontroller's type of this name, which the desktop does not have.</summary>
    public sealed class SpanByte;
}
