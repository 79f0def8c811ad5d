using System;

namespace LubeController.Files.Quantities;

/// <summary>Times as the virtual clock counts them.</summary>
public static class Microseconds
{
    /// <summary>A time in whole microseconds, rounded to the nearest.</summary>
    /// <param name="time">A quantity of the time family.</param>
    public static long Of(Quantity time) => (long)Math.Round((decimal)UnitFamily.Time.FromSi(time.Si, "us"), MidpointRounding.AwayFromZero);
}
