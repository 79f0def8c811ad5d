using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Board;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>
/// The registry of the board's faults. They stand apart from the plant's, which knows of no board; whoever lists faults
/// lists both.
/// </summary>
public static class BoardFaults
{
    /// <summary>Unit of a magnitude that counts something.</summary>
    public const string CountUnit = "count";

    /// <summary>Name of a block of the memory, its number left out.</summary>
    public const string BlockPrefix = "block-";

    /// <summary>Unit of a clock's error, millionths.</summary>
    public const string PpmUnit = "ppm";

    private static readonly BoardFaultInfo[] Entries =
    [
        new()
        {
            Kind = BoardFaultKind.LoopHangs,
            Name = "loop-hangs",
            Place = "the board's main loop",
            Manner = FaultManner.Stuck,
            Effect = "The main loop hangs at its next scan, and again after each restart: outputs stay as they were until the board's watchdog, kicked no more, resets the board.",
            Noticed = "Outputs freeze, drop together, and the controller starts anew with an alarm.",
            Needs = "a scan to hang at",
            HealingNote = "The loop hangs at no further scan; one that hangs already waits for its watchdog.",
        },
        new()
        {
            Kind = BoardFaultKind.LoopThrows,
            Name = "loop-throws",
            Place = "the board's main loop",
            Manner = FaultManner.Wrong,
            Effect = "Reading the inputs throws an exception, as of a driver: the main loop makes its outputs safe and asks for a restart, and so at the first scan after it.",
            Noticed = "Outputs drop together, and the controller starts anew with an alarm.",
            Needs = "a scan that reads the inputs",
            HealingNote = "The next scan reads its inputs again.",
        },
        new()
        {
            Kind = BoardFaultKind.ScanDelayed,
            Name = "scan-delayed",
            Place = "the board's main loop",
            Manner = FaultManner.Slow,
            Parameter = new("delay", "how much later than planned a scan comes", "s", 0.001, 60, 0.5),
            Second = new("span", "how long scans are delayed after it was set; 0 for the next one alone", "s", 0, 86_400, 0),
            Effect = "The next scan, or every one in a span, comes later than planned and reads its inputs then; a delay beyond the watchdog's time resets the board.",
            Noticed = "The lamp stumbles, and buttons are obeyed late.",
            Needs = "a scan that came later than planned",
            HealingNote = "A scan that is waited for comes at once, the next ones as planned.",
        },
        new()
        {
            Kind = BoardFaultKind.ScanJitters,
            Name = "scan-jitters",
            Place = "the board's main loop",
            Manner = FaultManner.Intermittent,
            Parameter = new("jitter", "most by which a scan comes earlier or later, at most half a scan period", "s", 0, 0.5, 0.0002) { Harmless = 0 },
            Effect = "Scans come a little earlier or later than planned, evenly spread by the seed.",
            Noticed = "Nothing.",
            Needs = "a scan at another time than planned",
        },
        new()
        {
            Kind = BoardFaultKind.ClockDrifts,
            Name = "clock-drifts",
            Place = "the board's oscillator",
            Manner = FaultManner.Wrong,
            Parameter = new("error", "how much faster than true its clock runs, slower if below zero", PpmUnit, -50_000, 50_000, 100) { Harmless = 0 },
            Effect = "Clock and scans of the board run fast or slow, and with them every rest and timeout.",
            Noticed = "Doses come earlier or later than a wall clock says.",
            Needs = "a clock that is off by a millisecond or more",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The clock runs true again; what it gained or lost stays.",
        },
        new()
        {
            Kind = BoardFaultKind.PinQueueShort,
            Name = "pin-queue-short",
            Place = "the board's queue of pin events",
            Manner = FaultManner.Wrong,
            Parameter = new("depth", "records it holds", CountUnit, BenchSetup.LeastPinQueueDepth, BenchSetup.MostPinQueueDepth, BenchSetup.LeastPinQueueDepth),
            Effect = "The queue between pins and main loop holds few records and drops the oldest when full.",
            Noticed = "Pulses are missing after a late scan.",
            Needs = "a pulse lost between two scans",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The queue holds as many records as before; lost pulses stay lost.",
        },
        new()
        {
            Kind = BoardFaultKind.StorageBitFlip,
            Name = "storage-bit-flip",
            Place = "the board's memory",
            Parts = [.. Enumerable.Range(0, MemoryLayout.UsualBlocks).Select(block => BlockPrefix + block)],
            PartText = $"block: {BlockPrefix}0 to {BlockPrefix}{MemoryLayout.UsualBlocks - 1}",
            Manner = FaultManner.Wrong,
            Parameter = new("bit", "which bit of the block, from the lowest of its first byte on", CountUnit, 0, (8 * MemoryLayout.UsualBlockLength) - 1, 200),
            Effect = "One bit of a block of the non-volatile memory turns round, as of age or radiation.",
            Noticed = "Nothing, before the controller starts anew.",
            Needs = "a start of the board after it, before the block is written anew",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The bit stays as it is until its block is written anew.",
        },
        new()
        {
            Kind = BoardFaultKind.StorageWorn,
            Name = "storage-worn",
            Place = "the board's memory",
            Manner = FaultManner.Off,
            Parameter = new("writes", "writes since it was new that each block stands", CountUnit, 0, 1e6, 0),
            Effect = "Blocks of the non-volatile memory that have been written so often take no further write and keep what they hold.",
            Noticed = "A warning with the next save; and once power is cut, that the controller goes on from an older state.",
            Needs = "a write that was refused",
            HealingNote = "Blocks take writes again.",
        },
        new()
        {
            Kind = BoardFaultKind.StorageWriteTorn,
            Name = "storage-write-torn",
            Place = "the board's memory",
            Manner = FaultManner.Intermittent,
            Parameter = new("bytes", "bytes that are still written", CountUnit, 0, MemoryLayout.UsualBlockLength, 100),
            Second = new("rest", "what stands behind them: 0 what stood there, 1 erased bytes, 2 anything", CountUnit, 0, 2, 1),
            Effect = "The supply dips in the middle of the next write to the non-volatile memory: the write is cut, the outputs drop, and the board starts anew.",
            Noticed = "Outputs drop together, and the controller starts anew.",
            Needs = "a write",
            HealingNote = "The next write is whole.",
        },
    ];

    /// <summary>All kinds, in the order of <see cref="BoardFaultKind"/>.</summary>
    public static IReadOnlyList<BoardFaultInfo> All { get; } = [.. Entries.OrderBy(fault => fault.Kind)];

    /// <summary>What is known of a kind.</summary>
    public static BoardFaultInfo Of(BoardFaultKind kind) => All[(int)kind];

    /// <summary>The kind of a name, or null.</summary>
    public static BoardFaultInfo? Find(string name) => All.FirstOrDefault(fault => string.Equals(fault.Name, name, StringComparison.Ordinal));
}
