using System;
using System.Collections.Generic;

namespace LubeController.Firmware.Tests.Samples;

/// <summary>Generics, in each form in which they slip in.</summary>
public static class GenericsSample
{
    public sealed class UnusedFunc
    {
        public Func<int>? Ask;
    }

    public sealed class UnusedAction
    {
        public Action<int>? Tell;
    }

    public sealed class GenericEvent
    {
        public EventHandler<EventArgs>? Told;
    }

    public sealed class GenericType<T>
    {
        public int Held;
    }

    public sealed class GenericMethod
    {
        public static int Count<T>() => 1;
    }

    public sealed class GenericCall
    {
        public static int Ask() => GenericMethod.Count<int>();
    }

    public sealed class GenericLocal
    {
        public static int Ask() => new List<int>().Count;
    }

    public abstract class GenericInterface : IComparable<int>
    {
        public abstract int CompareTo(int other);
    }

    public sealed class ArrayOfGeneric
    {
        public List<int>[]? Lists;
    }

    public sealed class NullableValue
    {
        public int? Perhaps;
    }

    public delegate void PlainDelegate(int value);

    public sealed class Good
    {
        public PlainDelegate? Tell;
        public int[] Values = new int[4];
        public string? Name;
    }
}
