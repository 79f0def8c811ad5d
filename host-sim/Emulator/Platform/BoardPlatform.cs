using System;
using System.Collections.Generic;
using LubeController.Emulator.Storage;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>
/// The microcontroller of the virtual board: oscillator, timing of scans, queue of pin events, watchdog and non-volatile
/// memory, and what is wrong with them. Everything is decided by the bench's seed and by virtual time.
/// </summary>
public sealed class BoardPlatform : FaultHost
{
    private readonly Func<long> _nowUs;
    private readonly int[] _flippedAt;
    private readonly int[] _flipsMet;
    private long _clockErrorSinceUs;
    private double _clockErrorPpm;

    internal BoardPlatform(BoardSetup setup, FlashStorage storage, Func<long> nowUs)
    {
        Storage = storage;
        _nowUs = nowUs;
        _flippedAt = new int[storage.BlockCount];
        _flipsMet = new int[storage.BlockCount];
        SoundQueueDepth = setup.QueueDepth;
        SoundJitterUs = setup.JitterUs;
        Clock = new BoardClock(setup.PeriodUs);
        Timing = new ScanTiming(setup.Seed, setup.PeriodUs) { JitterUs = SoundJitterUs };
        Queue = new PinQueue { Depth = SoundQueueDepth };
        Watchdog = new Watchdog(setup.WatchdogUs);
    }

    /// <inheritdoc/>
    protected override string Title => "the board";

    /// <inheritdoc/>
    protected override long TimeUs => _nowUs();

    // A bit turns round, and a scan is delayed, each time that it is asked for.
    /// <inheritdoc/>
    protected override bool Repeats => true;

    internal BoardClock Clock { get; }

    internal ScanTiming Timing { get; }

    internal PinQueue Queue { get; }

    internal Watchdog Watchdog { get; }

    internal FlashStorage Storage { get; }

    internal long SoundJitterUs { get; }

    internal int SoundQueueDepth { get; }

    internal bool LoopHangs { get; set; }

    internal bool LoopThrows { get; set; }

    /// <summary>Scans at which the main loop hung.</summary>
    internal long Hangs { get; set; }

    /// <summary>Scans at which reading the inputs threw.</summary>
    internal long Throws { get; set; }

    /// <summary>Scans that a delay held up.</summary>
    internal long DelayedScans { get; set; }

    /// <summary>Scans that came at another time than planned, held up by no delay.</summary>
    internal long ShiftedScans { get; set; }

    /// <summary>Pulses of the shaft that the queue of pin events dropped.</summary>
    internal long LostPulses { get; set; }

    /// <summary>Writes in which power went.</summary>
    internal long TornWrites { get; set; }

    /// <summary>Whole milliseconds that the clock has gained or lost since its rate was last set.</summary>
    internal long ClockErrorMs => (long)(Math.Abs(_clockErrorPpm) / 1e6 * (_nowUs() - _clockErrorSinceUs) / 1000);

    /// <summary>Whether the next scan is one that the core does not reckon with, so that it must not be skipped.</summary>
    internal bool Disturbs => LoopHangs || LoopThrows || Timing.Disturbs(_nowUs());

    /// <inheritdoc/>
    public override IReadOnlyList<string> PartsOf(Fault fault)
    {
        if (fault is not BoardFault own)
            return [];
        return own.Part.IsNamed ? BoardFaults.PartNames(own) : [""];
    }

    /// <summary>The board starts and reads its memory: bits that were turned in what was written are met.</summary>
    internal void NoteStart()
    {
        for (int block = 0; block < _flippedAt.Length; block++)
        {
            if (_flippedAt[block] > 0 && Storage.Writes(block) == _flippedAt[block])
                _flipsMet[block]++;
        }
    }

    /// <summary>Starts at which the board read a block with a turned bit.</summary>
    internal long FlipsMet(int block) => _flipsMet[block];

    internal void FlipBit(int block, int bit)
    {
        Storage.FlipBit(block, bit);
        _flippedAt[block] = Storage.Writes(block);
    }

    internal void SetClockError(double ppm)
    {
        Clock.SetError(_nowUs(), ppm);
        _clockErrorPpm = ppm;
        _clockErrorSinceUs = _nowUs();
    }
}
