using System;
using System.Collections.Generic;
using LubeController.Board;

namespace LubeController.Emulator.Storage;

/// <summary>Reads the logbook out of a board's storage.</summary>
public static class LogbookContents
{
    /// <summary>Every whole entry, the oldest first.</summary>
    /// <exception cref="ArgumentException">The storage is too small for a board.</exception>
    public static IReadOnlyList<LogEntry> Read(IBlockStorage storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        var layout = new MemoryLayout(storage.BlockCount, storage.BlockLength);
        var log = new Logbook(storage, layout.FirstLog, layout.LogBlocks, new Uptime());
        var entries = new List<LogEntry>();
        for (int place = 0; place < log.Places; place++)
        {
            var entry = new LogEntry();
            if (log.TryRead(place, entry))
                entries.Add(entry);
        }

        return entries;
    }
}
