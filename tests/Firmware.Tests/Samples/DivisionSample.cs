namespace LubeController.Firmware.Tests.Samples;

/// <summary>Divisors that are guarded, and such that only look it.</summary>
public static class DivisionSample
{
    public sealed class ByVariable
    {
        public static int Share(int whole, int parts) => whole / parts;
    }

    public sealed class RemainderByVariable
    {
        public static uint Rest(uint whole, uint parts) => whole % parts;
    }

    public sealed class CheckedElsewhere
    {
        public static int Share(int whole, int parts) => parts == 0 ? 0 : whole / parts;
    }

    public sealed class ByMinusOne
    {
        public static int Negated(int whole) => whole / -1;
    }

    public sealed class ByChoiceOfConstants
    {
        public static int Share(int whole, bool none) => whole / (none ? 0 : 2);
    }

    public static class Guard
    {
        public static int Quotient(int dividend, int divisor) => dividend / (divisor < 1 ? 1 : divisor);
    }

    public sealed class Good
    {
        public static int Tenth(int whole) => (whole / 10) + (whole % 1000);

        public static long TenthOf(long whole) => (whole / 10) + (whole % 3_000_000_000) + Guard.Quotient(1, 0);
    }
}
