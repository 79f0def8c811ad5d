using System.Globalization;
using System.Linq;
using LubeController.Emulator;

namespace LubeController.Plots;

/// <summary>What a panel shows, in numbers.</summary>
internal static class Numbers
{
    /// <summary>Highest pressure, how long the pump ran, and the pulses' times since its start, in one line.</summary>
    public static string Of(Panel panel)
    {
        Run run = Run.Of(panel.Dose);
        Signal pump = run.Trace.Find("output.pump")!;
        int stop = pump.IndexAt(run.StartUs) + 1;
        long endUs = stop < pump.Count ? pump.TimeUs(stop) : run.Trace.EndUs;
        Signal pressure = run.Trace.Find("pressure.line")!;
        int from = pressure.IndexAt(run.StartUs);
        double most = Enumerable.Range(from, pressure.IndexAt(endUs) + 1 - from).Max(pressure.Value);
        Signal pulses = run.Trace.Find(panel.Lanes[1].Signal)!;
        string times = string.Join(", ", Enumerable.Range(0, pulses.Count)
            .Where(point => pulses.TimeUs(point) > run.StartUs && pulses.TimeUs(point) <= endUs && pulses.Value(point) == 1)
            .Select(point => Seconds(pulses.TimeUs(point) - run.StartUs)));
        return $"{panel.Title}: {Bar(pressure.ValueAt(run.StartUs))} before it, at most {Bar(most)}, {Bar(pressure.ValueAt(endUs))} as the pump stops after {Seconds(endUs - run.StartUs)}; pulses at {times}";

        static string Seconds(long us) => (us / 1e6).ToString("0.0 's'", CultureInfo.InvariantCulture);
        static string Bar(double pascal) => (pascal / 1e5).ToString("0.0 'bar'", CultureInfo.InvariantCulture);
    }
}
