using System.Collections.Generic;
using LubeController.Emulator;

namespace LubeController.Scripts.Records;

/// <summary>A trace as one stream of records.</summary>
public static class TraceRecords
{
    /// <summary>Every recorded point in order of time, at one time in order of the signals, then the end of the run.</summary>
    public static IEnumerable<TraceRecord> Of(Trace trace)
    {
        var next = new PriorityQueue<(Signal Signal, int Order, int Point), (long TimeUs, int Order)>();
        for (int order = 0; order < trace.Signals.Count; order++)
        {
            Signal signal = trace.Signals[order];
            if (signal.Count > 0)
                next.Enqueue((signal, order, 0), (signal.TimeUs(0), order));
        }

        while (next.TryDequeue(out (Signal Signal, int Order, int Point) at, out (long TimeUs, int Order) key))
        {
            yield return new TraceRecord(key.TimeUs, at.Signal.Name, at.Signal.Value(at.Point));
            int following = at.Point + 1;
            if (following < at.Signal.Count)
                next.Enqueue((at.Signal, at.Order, following), (at.Signal.TimeUs(following), at.Order));
        }

        yield return new TraceRecord(trace.EndUs, TraceRecord.End, 0.0);
    }
}
