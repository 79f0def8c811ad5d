using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Emulator.Storage;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>
/// The microcontroller of the virtual board: oscillator, timing of scans, queue of pin events, watchdog and non-volatile
/// memory, and what is wrong with them. Everything is decided by the bench's seed and by virtual time.
/// </summary>
public sealed class BoardPlatform
{
    private const double UsPerS = 1e6;

    private readonly Func<long> _nowUs;
    private readonly int _queueDepth;
    private readonly long _jitterUs;
    private readonly FlashStorage _storage;
    private readonly Dictionary<string, int> _flippedAt = [];
    private readonly List<BoardFaultEntry> _log = [];
    private long _writesSeen;
    private long _refusedSeen;
    private readonly Dictionary<(BoardFaultKind Kind, string Part), int> _active = [];
    private long _clockErrorSinceUs;
    private double _clockErrorPpm;

    internal BoardPlatform(BenchSetup setup, FlashStorage storage, Func<long> nowUs)
    {
        _storage = storage;
        _nowUs = nowUs;
        _queueDepth = setup.PinQueueDepth;
        _jitterUs = setup.ScanJitterUs;
        long periodUs = setup.ScanPeriodMs * 1000L;
        Clock = new BoardClock(periodUs);
        Timing = new ScanTiming(setup.Seed, periodUs) { JitterUs = _jitterUs };
        Queue = new PinQueue { Depth = _queueDepth };
        Watchdog = new Watchdog(setup.WatchdogMs * 1000L);
    }

    /// <summary>Every application of a fault, in order of time.</summary>
    public IReadOnlyList<BoardFaultEntry> Log => _log;

    internal BoardClock Clock { get; }

    internal ScanTiming Timing { get; }

    internal PinQueue Queue { get; }

    internal Watchdog Watchdog { get; }

    internal bool LoopHangs { get; private set; }

    internal bool LoopThrows { get; private set; }

    /// <summary>Whether the next scan is one that the core does not reckon with, so that it must not be skipped.</summary>
    internal bool Disturbs => LoopHangs || LoopThrows || Timing.Disturbs(_nowUs());

    /// <summary>Whether a part has a fault now.</summary>
    /// <param name="kind">The fault.</param>
    /// <param name="part">The part; empty where there is nothing to choose.</param>
    public bool IsFaulted(BoardFaultKind kind, string part = "") => _active.ContainsKey((kind, part));

    /// <summary>Sets a fault; another magnitude takes the place of the one before.</summary>
    /// <param name="kind">The fault.</param>
    /// <param name="part">The part; empty where there is nothing to choose.</param>
    /// <param name="magnitude">Its magnitude in the registry's unit; null for the default.</param>
    /// <param name="second">Its second number in the registry's unit; null for the default.</param>
    /// <returns>Its entry in <see cref="Log"/>.</returns>
    /// <exception cref="ArgumentException">No such part.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside the registry's range.</exception>
    public int Apply(BoardFaultKind kind, string part = "", double? magnitude = null, double? second = null)
    {
        BoardFaultInfo info = BoardFaults.Of(kind);
        if (info.Parts.Count == 0 ? part.Length > 0 : !Has(info.Parts, part))
            throw new ArgumentException($"the fault {info.Name} has no part '{part}': give {(info.Parts.Count == 0 ? "none" : string.Join(", ", info.Parts))}", nameof(part));
        double first = Checked(info.Parameter, magnitude, nameof(magnitude));
        double other = Checked(info.Second, second, nameof(second));
        End((kind, part));
        _log.Add(new BoardFaultEntry(kind, part, _nowUs()));
        _active[(kind, part)] = _log.Count - 1;
        Take(kind, part, first, other);
        return _log.Count - 1;
    }

    /// <summary>Gives a fault that is in place another magnitude, as one that grows takes it; another fault is left alone.</summary>
    public void Adjust(BoardFaultKind kind, string part, double magnitude)
    {
        double first = Checked(BoardFaults.Of(kind).Parameter, magnitude, nameof(magnitude));
        if (IsFaulted(kind, part))
            Take(kind, part, first, 0);
    }

    /// <summary>Takes a fault away; nothing happens where it is not.</summary>
    public void Heal(BoardFaultKind kind, string part = "")
    {
        if (!IsFaulted(kind, part))
            return;
        End((kind, part));
        switch (kind)
        {
            case BoardFaultKind.LoopHangs:
                LoopHangs = false;
                break;
            case BoardFaultKind.LoopThrows:
                LoopThrows = false;
                break;
            case BoardFaultKind.ScanDelayed:
                Timing.StopDelaying();
                break;
            case BoardFaultKind.ScanJitters:
                Timing.JitterUs = _jitterUs;
                break;
            case BoardFaultKind.ClockDrifts:
                SetClockError(0);
                break;
            case BoardFaultKind.PinQueueShort:
                Queue.Depth = _queueDepth;
                break;
            case BoardFaultKind.StorageWorn:
                _storage.WearOutAfter(int.MaxValue);
                break;
            case BoardFaultKind.StorageWriteTorn:
                _storage.TearNoMore();
                break;
            default:
                break;
        }
    }

    /// <summary>Notes what took effect without anybody asking, at the end of a run.</summary>
    public void NoteFaultEffects() => NoteClock();

    /// <summary>The board starts and reads its memory: bits that were turned in what was written are met.</summary>
    internal void NoteStart()
    {
        foreach ((string part, int writes) in _flippedAt)
        {
            int now = _storage.Writes(BlockOf(part));
            if (now > 0 && now == writes)
                Mark(BoardFaultKind.StorageBitFlip, part);
        }
    }

    /// <summary>Looks whether worn blocks have refused writes.</summary>
    internal void NoteWrites()
    {
        if (_storage.TotalWrites == _writesSeen)
            return;
        _writesSeen = _storage.TotalWrites;
        long refused = _writesSeen;
        for (int block = 0; block < _storage.BlockCount; block++)
            refused -= _storage.Writes(block) + _storage.Programs(block);
        if (refused > _refusedSeen)
            Mark(BoardFaultKind.StorageWorn);
        _refusedSeen = refused;
    }

    /// <summary>A fault that is in place made a difference.</summary>
    internal void Mark(BoardFaultKind kind, string part = "")
    {
        if (_active.TryGetValue((kind, part), out int entry))
            _log[entry] = _log[entry] with { TookEffect = true };
    }

    private static bool Has(IReadOnlyList<string> parts, string part)
    {
        foreach (string one in parts)
        {
            if (string.Equals(one, part, StringComparison.Ordinal))
                return true;
        }

        return false;
    }

    private static double Checked(FaultParameter? parameter, double? value, string argument)
    {
        if (parameter == null)
            return value == null ? 0 : throw new ArgumentOutOfRangeException(argument, value, "the fault has no such number: give none");
        double number = value ?? parameter.Default;
        return number >= parameter.Minimum && number <= parameter.Maximum
            ? number
            : throw new ArgumentOutOfRangeException(argument, value, $"{parameter.Name} is {parameter.Minimum} to {parameter.Maximum} {parameter.Unit}");
    }

    private void Take(BoardFaultKind kind, string part, double magnitude, double second)
    {
        switch (kind)
        {
            case BoardFaultKind.LoopHangs:
                LoopHangs = true;
                break;
            case BoardFaultKind.LoopThrows:
                LoopThrows = true;
                break;
            case BoardFaultKind.ScanDelayed:
                Timing.Delay(_nowUs(), Us(magnitude), Us(second));
                break;
            case BoardFaultKind.ScanJitters:
                Timing.JitterUs = Us(magnitude);
                break;
            case BoardFaultKind.ClockDrifts:
                SetClockError(magnitude);
                break;
            case BoardFaultKind.PinQueueShort:
                Queue.Depth = Whole(magnitude);
                break;
            case BoardFaultKind.StorageBitFlip:
                int block = BlockOf(part);
                _storage.FlipBit(block, Whole(magnitude));
                _flippedAt[part] = _storage.Writes(block);
                break;
            case BoardFaultKind.StorageWorn:
                NoteWrites();
                _storage.WearOutAfter(Whole(magnitude));
                break;
            case BoardFaultKind.StorageWriteTorn:
                _storage.TearNextWriteAt(Whole(magnitude), (TearRest)Whole(second));
                break;
            default:
                break;
        }
    }

    private void SetClockError(double ppm)
    {
        NoteClock();
        Clock.SetError(_nowUs(), ppm);
        _clockErrorPpm = ppm;
        _clockErrorSinceUs = _nowUs();
    }

    private void NoteClock()
    {
        if (Math.Abs(_clockErrorPpm) / UsPerS * (_nowUs() - _clockErrorSinceUs) >= 1000)
            Mark(BoardFaultKind.ClockDrifts);
    }

    private void End((BoardFaultKind Kind, string Part) fault)
    {
        if (fault.Kind == BoardFaultKind.ClockDrifts)
            NoteClock();
        if (_active.Remove(fault, out int entry))
            _log[entry] = _log[entry] with { EndedUs = _nowUs() };
    }

    private static int BlockOf(string part) => int.Parse(part.AsSpan(BoardFaults.BlockPrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture);

    private static int Whole(double magnitude) => (int)Math.Round(magnitude);

    private static long Us(double seconds) => (long)Math.Round(seconds * UsPerS);
}
