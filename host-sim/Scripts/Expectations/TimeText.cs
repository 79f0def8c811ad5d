using System;
using System.Collections.Generic;
using System.Globalization;

namespace LubeController.Scripts.Expectations;

/// <summary>Writes times for people, exact to the microsecond.</summary>
public static class TimeText
{
    /// <summary>For instance <c>1 h 23 min 4.5 s</c> or <c>350 ms</c>.</summary>
    /// <param name="microseconds">The time; fractions of a microsecond are dropped.</param>
    public static string Of(double microseconds)
    {
        if (double.IsNaN(microseconds))
            return "never";
        decimal us = Math.Floor((decimal)Math.Abs(microseconds));
        string sign = microseconds < 0 ? "-" : "";
        if (us < 1_000_000m && us > 0m)
            return sign + (us / 1000m).ToString("0.###", CultureInfo.InvariantCulture) + " ms";
        var parts = new List<string>();
        Take(ref us, 86_400_000_000m, "d", parts);
        Take(ref us, 3_600_000_000m, "h", parts);
        Take(ref us, 60_000_000m, "min", parts);
        if (us > 0m || parts.Count == 0)
            parts.Add((us / 1_000_000m).ToString("0.######", CultureInfo.InvariantCulture) + " s");
        return sign + string.Join(' ', parts);
    }

    private static void Take(ref decimal us, decimal unit, string name, List<string> parts)
    {
        decimal whole = Math.Floor(us / unit);
        if (whole <= 0m)
            return;
        parts.Add(whole.ToString("0", CultureInfo.InvariantCulture) + " " + name);
        us -= whole * unit;
    }
}
