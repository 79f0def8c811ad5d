using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Board;
using LubeController.Emulator.Storage;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>The faults of the board. They stand apart from the plant's, which knows of no board; whoever lists faults lists both.</summary>
public static class BoardFaults
{
    /// <summary>Unit of a magnitude that counts something.</summary>
    public const string CountUnit = "count";

    /// <summary>Unit of a clock's error, millionths.</summary>
    public const string PpmUnit = "ppm";

    // Name of a block of the memory, its number left out.
    private const string BlockPrefix = "block-";

    private const double UsPerS = 1e6;

    private static readonly FaultPart Board = new FaultPart<BoardPlatform>();
    private static readonly FaultPart Block = new FaultPart<BoardPlatform>($"block: {BlockPrefix}0 to {BlockPrefix}{MemoryLayout.UsualBlocks - 1}");

    /// <summary>The main loop hangs at its next scan.</summary>
    public static BoardFault LoopHangs { get; } = new(
        Board,
        change: (board, _, fault) => board.LoopHangs = fault.On,
        met: (board, _) => board.Hangs)
    {
        Name = "loop-hangs",
        Place = "the board's main loop",
        Manner = FaultManner.Stuck,
        Effect = "The main loop hangs at its next scan, and again after each restart: outputs stay as they were until the board's watchdog, kicked no more, resets the board.",
        Noticed = "Outputs freeze, drop together, and the controller starts anew with an alarm.",
        Needs = "a scan to hang at",
        HealingNote = "The loop hangs at no further scan; one that hangs already waits for its watchdog.",
    };

    /// <summary>Reading the inputs throws an exception.</summary>
    public static BoardFault LoopThrows { get; } = new(
        Board,
        change: (board, _, fault) => board.LoopThrows = fault.On,
        met: (board, _) => board.Throws)
    {
        Name = "loop-throws",
        Place = "the board's main loop",
        Manner = FaultManner.Wrong,
        Effect = "Reading the inputs throws an exception, as of a driver: the main loop makes its outputs safe and asks for a restart, and so at the first scan after it.",
        Noticed = "Outputs drop together, and the controller starts anew with an alarm.",
        Needs = "a scan that reads the inputs",
        HealingNote = "The next scan reads its inputs again.",
    };

    /// <summary>Scans come later than planned.</summary>
    public static BoardFault ScanDelayed { get; } = new(
        Board,
        change: (board, _, fault) => board.Timing.Delay(fault.NowUs, Us(fault.Value), Us(fault.Second), fault.On),
        met: (board, _) => board.DelayedScans)
    {
        Name = "scan-delayed",
        Place = "the board's main loop",
        Manner = FaultManner.Slow,
        Parameter = new("delay", "how much later than planned a scan comes", "s", 0.001, 60, 0.5),
        Second = new("span", "how long scans are delayed after it was set; 0 for the next one alone", "s", 0, 86_400, 0),
        Effect = "The next scan, or every one in a span, comes later than planned and reads its inputs then; a delay beyond the watchdog's time resets the board.",
        Noticed = "The lamp stumbles, and buttons are obeyed late.",
        Needs = "a scan that came later than planned",
        HealingNote = "A scan that is waited for comes at once, the next ones as planned.",
    };

    /// <summary>Scans come a little earlier or later than planned.</summary>
    public static BoardFault ScanJitters { get; } = new(
        Board,
        change: (board, _, fault) => board.Timing.JitterUs = fault.On ? Us(fault.Value) : board.SoundJitterUs,
        met: (board, _) => board.ShiftedScans)
    {
        Name = "scan-jitters",
        Place = "the board's main loop",
        Manner = FaultManner.Intermittent,
        Parameter = new("jitter", "most by which a scan comes earlier or later, at most half a scan period", "s", 0, 0.5, 0.0002) { Harmless = 0 },
        Effect = "Scans come a little earlier or later than planned, evenly spread by the seed.",
        Noticed = "Nothing.",
        Needs = "a scan at another time than planned",
    };

    /// <summary>The oscillator runs fast or slow.</summary>
    public static BoardFault ClockDrifts { get; } = new(
        Board,
        change: (board, _, fault) => board.SetClockError(fault.Value),
        met: (board, _) => board.ClockErrorMs)
    {
        Name = "clock-drifts",
        Place = "the board's oscillator",
        Manner = FaultManner.Wrong,
        Parameter = new("error", "how much faster than true its clock runs, slower if below zero", PpmUnit, -50_000, 50_000, 100) { Harmless = 0 },
        Effect = "Clock and scans of the board run fast or slow, and with them every rest and timeout.",
        Noticed = "Doses come earlier or later than a wall clock says.",
        Needs = "a clock that is off by a millisecond or more",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The clock runs true again; what it gained or lost stays.",
    };

    /// <summary>The queue of pin events holds few records.</summary>
    public static BoardFault PinQueueShort { get; } = new(
        Board,
        change: (board, _, fault) => board.Queue.Depth = fault.On ? Whole(fault.Value) : board.SoundQueueDepth,
        met: (board, _) => board.LostPulses)
    {
        Name = "pin-queue-short",
        Place = "the board's queue of pin events",
        Manner = FaultManner.Wrong,
        Parameter = new("depth", "records it holds", CountUnit, PinQueue.LeastDepth, PinQueue.MostDepth, PinQueue.LeastDepth),
        Effect = "The queue between pins and main loop holds few records and drops the oldest when full.",
        Noticed = "Pulses are missing after a late scan.",
        Needs = "a pulse lost between two scans",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The queue holds as many records as before; lost pulses stay lost.",
    };

    /// <summary>A bit of the memory turns round.</summary>
    public static BoardFault StorageBitFlip { get; } = new(
        Block,
        change: (board, block, fault) =>
        {
            if (fault.On)
                board.FlipBit(block, Whole(fault.Value));
        },
        met: (board, block) => board.FlipsMet(block))
    {
        Name = "storage-bit-flip",
        Place = "the board's memory",
        Manner = FaultManner.Wrong,
        Parameter = new("bit", "which bit of the block, from the lowest of its first byte on", CountUnit, 0, (8 * MemoryLayout.UsualBlockLength) - 1, 200),
        Effect = "One bit of a block of the non-volatile memory turns round, as of age or radiation.",
        Noticed = "Nothing, before the controller starts anew.",
        Needs = "a start of the board after it, before the block is written anew",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The bit stays as it is until its block is written anew.",
    };

    /// <summary>The memory's blocks stand so many writes.</summary>
    public static BoardFault StorageWorn { get; } = new(
        Board,
        change: (board, _, fault) => board.Storage.WearOutAfter(fault.On ? Whole(fault.Value) : int.MaxValue),
        met: (board, _) => board.Storage.RefusedWrites)
    {
        Name = "storage-worn",
        Place = "the board's memory",
        Manner = FaultManner.Off,
        Parameter = new("writes", "writes since it was new that each block stands", CountUnit, 0, 1e6, 0),
        Effect = "Blocks of the non-volatile memory that have been written so often take no further write and keep what they hold.",
        Noticed = "A warning with the next save; and once power is cut, that the controller goes on from an older state.",
        Needs = "a write that was refused",
        HealingNote = "Blocks take writes again.",
    };

    /// <summary>Power goes in the middle of the memory's next write.</summary>
    public static BoardFault StorageWriteTorn { get; } = new(
        Board,
        change: (board, _, fault) => Tear(board.Storage, fault),
        met: (board, _) => board.TornWrites)
    {
        Name = "storage-write-torn",
        Place = "the board's memory",
        Manner = FaultManner.Intermittent,
        Parameter = new("bytes", "bytes that are still written", CountUnit, 0, MemoryLayout.UsualBlockLength, 100),
        Second = new("rest", "what stands behind them: 0 what stood there, 1 erased bytes, 2 anything", CountUnit, 0, 2, 1),
        Effect = "The supply dips in the middle of the next write to the non-volatile memory: the write is cut, the outputs drop, and the board starts anew.",
        Noticed = "Outputs drop together, and the controller starts anew.",
        Needs = "a write",
        HealingNote = "The next write is whole.",
    };

    /// <summary>All of them, in the order in which they are listed.</summary>
    public static IReadOnlyList<BoardFault> All { get; } =
    [
        LoopHangs, LoopThrows, ScanDelayed, ScanJitters, ClockDrifts,
        PinQueueShort, StorageBitFlip, StorageWorn, StorageWriteTorn,
    ];

    /// <summary>The fault of a name, or null.</summary>
    public static BoardFault? Find(string name) => All.FirstOrDefault(fault => string.Equals(fault.Name, name, StringComparison.Ordinal));

    /// <summary>The parts of the board that can have a fault; empty where there is nothing to choose.</summary>
    public static IReadOnlyList<string> PartNames(BoardFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Part.IsNamed ? [.. Enumerable.Range(0, MemoryLayout.UsualBlocks).Select(block => BlockPrefix + block)] : [];
    }

    /// <summary>The block that a part's name names; -1 where it names none.</summary>
    internal static int BlockOf(string part) =>
        part.Length == 0 ? -1 : int.Parse(part.AsSpan(BlockPrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture);

    private static void Tear(FlashStorage storage, FaultSetting fault)
    {
        if (fault.On)
            storage.TearNextWriteAt(Whole(fault.Value), (TearRest)Whole(fault.Second));
        else
            storage.TearNoMore();
    }

    private static int Whole(double magnitude) => (int)Math.Round(magnitude);

    private static long Us(double seconds) => (long)Math.Round(seconds * UsPerS);
}
