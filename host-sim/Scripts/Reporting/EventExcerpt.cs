using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Scripts.Expectations;

namespace LubeController.Scripts.Reporting;

/// <summary>The events around an instant: up to ten before or at it and ten after, more of one where the other has fewer.</summary>
internal static class EventExcerpt
{
    private const int Most = 20;

    /// <summary>One line for each event, earliest first.</summary>
    public static IEnumerable<string> Around(IReadOnlyList<TraceEvent> events, double timeUs)
    {
        int after = 0;
        int high = events.Count;
        while (after < high)
        {
            int middle = (after + high) / 2;
            if (events[middle].TimeUs <= timeUs)
                after = middle + 1;
            else
                high = middle;
        }

        int first = Math.Max(0, Math.Min(after - (Most / 2), events.Count - Most));
        return events.Skip(first).Take(Most).Select(entry => $"{TimeText.Of(entry.TimeUs),-22} {entry.Kind,-7} {entry.Text}");
    }
}
