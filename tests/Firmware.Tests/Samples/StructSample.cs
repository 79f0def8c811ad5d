using System;

namespace LubeController.Firmware.Tests.Samples;

/// <summary>Structs held, copied or handed over by value.</summary>
public static class StructSample
{
    public struct Pair
    {
        public int First;
        public int Second;
    }

    public sealed class Copied
    {
        public static int Swap(int first, int second)
        {
            Pair one;
            one.First = first;
            one.Second = second;
            Pair other = one;
            other.First = second;
            return one.First + other.First + other.Second;
        }
    }

    public sealed class Parameter
    {
        public static int First(Pair pair) => pair.First;
    }

    public sealed class Result
    {
        public static Pair Of(Pair[] pairs) => pairs[0];
    }

    public sealed class ThroughReference
    {
        public static void Put(ref Pair to, ref Pair from) => to = from;
    }

    public sealed class BetweenFields
    {
        public Pair Left;
        public Pair Right;

        public void Copy() => Left = Right;
    }

    public sealed class TimeLocal
    {
        public static long Ticks(long ticks)
        {
            var span = new TimeSpan(ticks);
            return span.Ticks + span.Ticks;
        }
    }

    public sealed class Good
    {
        public Pair Held;
        public DayOfWeek Day = DayOfWeek.Monday;
        public long[] Values = [];

        public long Sum(bool twice)
        {
            DayOfWeek day = Day;
            long sum = Held.First + Values[(int)day];
            return twice ? sum + sum : sum;
        }
    }
}
