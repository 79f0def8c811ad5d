namespace LubeController.Core;

/// <summary>The only place that divides by a variable: division by zero is a processor fault on the microcontroller.</summary>
public static class SafeDivide
{
    /// <summary>The quotient, rounded towards zero; a divisor below 1 counts as 1.</summary>
    public static int Quotient(int dividend, int divisor) => dividend / (divisor < 1 ? 1 : divisor);

    /// <summary>The quotient of two numbers that are not negative, rounded down and saturating; a divisor below 1 counts as 1.</summary>
    public static int QuotientDown(long dividend, long divisor)
    {
        long quotient = dividend / (divisor < 1 ? 1 : divisor);
        return quotient > int.MaxValue ? int.MaxValue : (int)quotient;
    }

    /// <summary>The quotient of two numbers that are not negative, rounded up and saturating; a divisor below 1 counts as 1.</summary>
    public static int QuotientUp(long dividend, int divisor)
    {
        long by = divisor < 1 ? 1 : divisor;
        long quotient = (dividend + by - 1) / by;
        return quotient > int.MaxValue ? int.MaxValue : (int)quotient;
    }
}
