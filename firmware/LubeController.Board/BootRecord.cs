using LubeController.Core;

namespace LubeController.Board;

/// <summary>What is kept of the board's starts. Written at every start, before the pump may run, and when the main loop gives up.</summary>
public sealed class BootRecord
{
    // Version 1 held only the number of corrupt places, which is ignored.
    private const int Version = 2;
    private const int PlacesAt = 28;
    private const int PayloadLength = PlacesAt + CorruptPlaces.Length;
    private const int At = BlockRing.HeaderLength;

    private readonly BlockRing _ring;
    private readonly Uptime _uptime;
    private readonly CorruptPlaces _corruptReported = new CorruptPlaces();
    private int _starts;
    private ResetCause _cause;
    private int _faults;
    private bool _faultPending;

    /// <summary>Reads the newest whole record of two blocks.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="first">The first block.</param>
    /// <param name="count">How many, 2 or more.</param>
    /// <param name="uptime">The time powered, kept with it.</param>
    public BootRecord(IBlockStorage storage, int first, int count, Uptime uptime)
    {
        _uptime = uptime;
        _ring = new BlockRing(storage, BlockKind.Boot, Version, first, count, PayloadLength, true);
        _ring.Load();
        if (!_ring.LoadNewest())
            return;
        byte[] frame = _ring.Frame;
        _starts = (int)ByteOrder.Get(frame, At);
        _cause = (ResetCause)ByteOrder.Get(frame, At + 4);
        _faults = (int)ByteOrder.Get(frame, At + 8);
        _faultPending = frame[At + 12] != 0;
        _uptime.RaiseTo((int)ByteOrder.Get(frame, At + 20), (int)ByteOrder.Get(frame, At + 24));
        if (_ring.LoadedVersion >= Version)
            _corruptReported.Read(frame, At + PlacesAt);
    }

    /// <summary>The blocks.</summary>
    public BlockRing Ring => _ring;

    /// <summary>Starts of the board's life, this one among them once it is committed; saturating.</summary>
    public int Starts => _starts;

    /// <summary>Why the board started last.</summary>
    public ResetCause Cause => _cause;

    /// <summary>Faults of the main loop in the board's life, saturating.</summary>
    public int Faults => _faults;

    /// <summary>Whether a fault of the main loop waits to be raised as an alarm.</summary>
    public bool FaultPending => _faultPending;

    /// <summary>Corrupt places of the memory for which the alarm was raised already.</summary>
    public CorruptPlaces CorruptReported => _corruptReported;

    /// <summary>Commits a start.</summary>
    /// <param name="cause">Why the board started.</param>
    /// <param name="corrupt">Corrupt places found; what was overwritten since is reported again if it recurs.</param>
    /// <returns>Whether it stands now.</returns>
    public bool CommitStart(ResetCause cause, CorruptPlaces corrupt)
    {
        _starts = Saturating.Add(_starts, 1);
        _cause = cause;
        _faultPending |= cause == ResetCause.LoopFault || cause == ResetCause.Watchdog;
        _corruptReported.KeepOnly(corrupt);
        return Write();
    }

    /// <summary>The alarms of this start stand in the saved state: they need not be raised again.</summary>
    /// <param name="corrupt">Corrupt places found.</param>
    /// <returns>Whether that stands now; nothing is written where nothing waited.</returns>
    public bool CommitReported(CorruptPlaces corrupt)
    {
        if (!_faultPending && corrupt.AreAllIn(_corruptReported))
            return true;
        _faultPending = false;
        _corruptReported.CopyFrom(corrupt);
        return Write();
    }

    /// <summary>Marks that the main loop gave up, before the board restarts: a power cut after it does not hide the fault.</summary>
    /// <returns>Whether the mark stands now.</returns>
    public bool MarkFault()
    {
        _faults = Saturating.Add(_faults, 1);
        _faultPending = true;
        return Write();
    }

    private bool Write()
    {
        byte[] frame = _ring.Frame;
        ByteOrder.Put(frame, At, (uint)_starts);
        ByteOrder.Put(frame, At + 4, (uint)_cause);
        ByteOrder.Put(frame, At + 8, (uint)_faults);
        ByteOrder.Put(frame, At + 12, _faultPending ? 1u : 0u);
        ByteOrder.Put(frame, At + 16, 0);
        ByteOrder.Put(frame, At + 20, (uint)_uptime.Seconds);
        ByteOrder.Put(frame, At + 24, (uint)_uptime.Milliseconds);
        _corruptReported.Write(frame, At + PlacesAt);
        return _ring.Write(PayloadLength);
    }
}
