namespace LubeController.Firmware.Tests.Samples;

/// <summary>Scans that allocate, each in another way, and two that do not.</summary>
public static class AllocationSample
{
    public delegate object? Maker(int value);

    public interface IAsked
    {
        object? Ask();
    }

    public class Direct
    {
        public object? Held;

        public void Scan() => Held = new object();
    }

    public class ThroughHelper
    {
        public object? Held;

        public void Scan() => First();

        private void First() => Held = Second();

        private static object Second() => new();
    }

    public class Overridden
    {
        public void Scan() => Ask();

        protected virtual object? Ask() => null;
    }

    public sealed class Overrides : Overridden
    {
        protected override object? Ask() => new();
    }

    public class ThroughInterface(IAsked asked)
    {
        public object? Scan() => asked.Ask();
    }

    public sealed class Implements : IAsked
    {
        public object? Ask() => new();
    }

    public class Inherited
    {
        public object? Ask() => new();
    }

    public sealed class ImplementsByInheritance : Inherited, IAsked2;

    public interface IAsked2
    {
        object? Ask();
    }

    public sealed class ThroughInheritedImplementation(IAsked2 asked)
    {
        public object? Scan() => asked.Ask();
    }

    public interface IAsked3
    {
        object? Ask();
    }

    public sealed class ImplementsExplicitly : IAsked3
    {
        object? IAsked3.Ask() => new();
    }

    public sealed class ThroughExplicitImplementation(IAsked3 asked)
    {
        public object? Scan() => asked.Ask();
    }

    public sealed class Boxing
    {
        public object? Held;

        public void Scan(int nowMs) => Held = nowMs;
    }

    public sealed class ArrayMade
    {
        public int[]? Held;

        public void Scan(int nowMs) => Held = new int[nowMs];
    }

    public sealed class ParamsMade
    {
        public int Scan(int nowMs) => Count(nowMs, nowMs);

        private static int Count(params int[] values) => values.Length;
    }

    public sealed class Concatenation(string left, string right)
    {
        public string Scan() => left + right;
    }

    public sealed class Literal
    {
        public string Scan() => "a";
    }

    public sealed class EnumText(System.DayOfWeek day)
    {
        public string Scan() => day.ToString();
    }

    public sealed class Enumeration(System.Collections.ArrayList list)
    {
        public int Scan()
        {
            int count = 0;
            foreach (object? one in list)
                count += one == null ? 0 : 1;
            return count;
        }
    }

    public sealed class Lambda
    {
        public object? Scan(int nowMs)
        {
            Maker make = value => new int[value + nowMs];
            return make(nowMs);
        }
    }

    public sealed class DelegateMadeElsewhere
    {
        public delegate object? OtherMaker(int value);

        private readonly OtherMaker _make = static value => new int[value];

        public object? Scan(int nowMs) => _make(nowMs);
    }

    public sealed class Throws
    {
        public void Scan(int nowMs)
        {
            if (nowMs < 0)
                throw new System.InvalidOperationException();
        }
    }

    public sealed class Good
    {
        private readonly Part[] _parts = [new Part(), new Part()];
        private readonly IQuiet _quiet = new Part();
        private int _sum;

        public int Scan(int nowMs)
        {
            foreach (Part part in _parts)
                _sum += part.Advance(nowMs);
            return _sum + _quiet.Ask(nowMs);
        }

        public object AllocatesOutsideOfTheScan() => new();
    }

    public interface IQuiet
    {
        int Ask(int value);
    }

    public sealed class Part : IQuiet
    {
        private int _held;

        public int Advance(int value) => _held += value;

        public int Ask(int value) => Recursive(value);

        private static int Recursive(int value) => value <= 0 ? 0 : Recursive(value - 1);
    }
}
