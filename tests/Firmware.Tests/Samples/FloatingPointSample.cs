namespace LubeController.Firmware.Tests.Samples;

/// <summary>Floating point, wherever it can hide.</summary>
public static class FloatingPointSample
{
    public sealed class Field
    {
        public float Level;
    }

    public sealed class Signature
    {
        public static double Same(double value) => value;
    }

    public sealed class ConstantAndConversion
    {
        public static int Half(int value) => (int)(value * 0.5);
    }

    public sealed class ArrayElement
    {
        public static bool AnyAt(float[] values) => values[0] > values[1];
    }

    public sealed class DecimalField
    {
        public decimal Level;
    }

    public sealed class Good
    {
        public long LevelMl;

        public static int Half(int value) => value >> 1;
    }
}
