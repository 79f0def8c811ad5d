using System.Collections.Generic;
using LubeController.Emulator;
using ScottPlot;

namespace LubeController.Plots;

/// <summary>A signal's recorded points as points of a plot. Nothing is sampled anew and nothing smoothed.</summary>
internal static class Curve
{
    /// <summary>
    /// The recorded points between two times, x in s since <paramref name="zeroUs"/>, y as recorded; the value at each end of
    /// the window is added. A signal that keeps its value gets the corners of its steps. Points are left out where the line
    /// through those that stay passes every one of them within <paramref name="within"/>, in the signal's unit.
    /// </summary>
    public static List<Coordinates> Of(Signal signal, long fromUs, long toUs, long zeroUs, double within)
    {
        var line = new SparseLine(within);
        double last = signal.ValueAt(fromUs);
        Add(last, fromUs);
        for (int point = signal.IndexAt(fromUs) + 1; point < signal.Count && signal.TimeUs(point) <= toUs; point++)
        {
            if (signal.Kind != SignalKind.Linear)
                Add(last, signal.TimeUs(point));
            Add(signal.Value(point), signal.TimeUs(point));
        }

        Add(signal.ValueAt(toUs), toUs);
        return line.Finish();

        void Add(double value, long timeUs)
        {
            line.Add(new Coordinates((timeUs - zeroUs) / 1e6, value));
            last = value;
        }
    }
}
