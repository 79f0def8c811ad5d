namespace LubeController.Firmware.Tests.Samples;

/// <summary>Checked arithmetic.</summary>
public static class CheckedArithmeticSample
{
    public sealed class Addition
    {
        public static int Sum(int left, int right) => checked(left + right);
    }

    public sealed class Conversion
    {
        public static byte Narrow(int value) => checked((byte)value);
    }

    public sealed class UnsignedMultiplication
    {
        public static uint Product(uint left, uint right) => checked(left * right);
    }

    public sealed class Good
    {
        public static int Sum(int left, int right) => unchecked(left + right);

        public static byte Narrow(int value) => unchecked((byte)value);
    }
}
