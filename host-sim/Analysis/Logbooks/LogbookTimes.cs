using System.Globalization;

namespace LubeController.Analysis.Logbooks;

/// <summary>Times of a logbook as text.</summary>
internal static class LogbookTimes
{
    /// <summary>Time of day, UTC, as in ISO 8601; empty where the board did not know it.</summary>
    public static string At(LogTime time) => time.WallTime is { } wall ? wall.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture) : "";
}
