using System;
using System.Collections.Generic;

namespace LubeController.Emulator.Platform;

/// <summary>
/// The queue through which pin events come from interrupts to the main loop, which empties it at each scan. When full it
/// drops the oldest: shaft pulses are counted from its records and so are lost, while edges of cycle switches, whose
/// levels are read from the pins, only take up room.
/// </summary>
internal sealed class PinQueue
{
    /// <summary>Fewest records that a queue holds.</summary>
    public const int LeastDepth = 16;

    /// <summary>Most records that a queue holds.</summary>
    public const int MostDepth = 512;

    private readonly List<long> _edgesUs = [];

    /// <summary>Records it holds.</summary>
    public required int Depth { get; set; }

    /// <summary>Edges of cycle switches since the last scan.</summary>
    public int Edges => _edgesUs.Count;

    /// <summary>An edge of a cycle switch.</summary>
    /// <param name="timeUs">When, us; not before the last one.</param>
    public void Add(long timeUs) => _edgesUs.Add(timeUs);

    /// <summary>Shaft pulses among the records that were dropped since the last scan.</summary>
    /// <param name="before">Count of shaft pulses at the last scan.</param>
    /// <param name="now">The count now.</param>
    /// <param name="timeOf">When a pulse came, us, by its number.</param>
    public long LostPulses(long before, long now, Func<long, long> timeOf)
    {
        long kept = now;
        int edge = _edgesUs.Count - 1;
        if (now - before + _edgesUs.Count <= Depth)
            return 0;
        for (int record = 0; record < Depth; record++)
        {
            if (kept > before && (edge < 0 || timeOf(kept) >= _edgesUs[edge]))
                kept--;
            else
                edge--;
        }

        return kept - before;
    }

    /// <summary>The main loop has taken everything.</summary>
    public void Clear() => _edgesUs.Clear();
}
