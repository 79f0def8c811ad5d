namespace LubeController.Firmware.Tests.Samples;

/// <summary>Static initialisers that read a static field of another class.</summary>
public static class StaticInitialiserSample
{
    public static class Source
    {
        public const int Fixed = 3;
        public static int Value = 7;

        public static int Read() => Value;
    }

    public sealed class Direct
    {
        public static int Twice = Source.Value * 2;
    }

    public sealed class ThroughMethods
    {
        public static int Twice = Make();

        private static int Make() => Source.Read() * 2;
    }

    public sealed class ThroughConstructor
    {
        public static Reader Made = new();

        public sealed class Reader
        {
            public int Held = Source.Value;
        }
    }

    public abstract class Asked
    {
        public abstract int Ask();
    }

    public sealed class Answers : Asked
    {
        public override int Ask() => Source.Value;
    }

    public sealed class ThroughOverride
    {
        public static int Twice = Make(null);

        private static int Make(Asked? asked) => asked == null ? 0 : asked.Ask();
    }

    public sealed class Good
    {
        public static int Own = 5;
        public static int Twice = Own * 2;
        public static int Constant = Source.Fixed;
        public static int[] Table = [1, 2, 3, 4, 5];
        public int Later = Source.Value;
    }
}
