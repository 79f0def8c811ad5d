using LubeController.Core;

namespace LubeController.Board;

/// <summary>One entry of the logbook, and how it stands in 32 bytes: the last four but four are a CRC-32, the last four show that the write was finished.</summary>
public sealed class LogEntry
{
    /// <summary>Bytes of an entry.</summary>
    public const int Length = 32;

    private const int CheckedLength = 24;
    private const uint Finish = 0x474F4C21;
    private const int WallTimeFlag = 1;
    private const int FirstUpFlag = 2;

    /// <summary>Number of the entry in the board's life. A number that is left out was torn by a power cut.</summary>
    public uint Sequence { get; set; }

    /// <summary>What happened; see <see cref="LogEvent"/>.</summary>
    public int What { get; set; }

    /// <summary>Who caused it.</summary>
    public LogSource Source { get; set; }

    /// <summary>Time powered, whole seconds.</summary>
    public int UptimeS { get; set; }

    /// <summary>Milliseconds beyond them, 0 to 999.</summary>
    public int UptimeMs { get; set; }

    /// <summary>What it is about: an alarm, a button, a phase; 0 to 255.</summary>
    public int Subject { get; set; }

    /// <summary>More about it.</summary>
    public int Detail { get; set; }

    /// <summary>Whether the board knew the time of day.</summary>
    public bool HasWallTime { get; set; }

    /// <summary>Seconds since 1970-01-01 00:00 UTC, 0 where the board does not know them; good until 2106.</summary>
    public uint WallTimeS { get; set; }

    /// <summary>Whether the alarm was first up then.</summary>
    public bool FirstUp { get; set; }

    /// <summary>Fills in an event of a scan.</summary>
    public void Fill(ScanEvents events, int index, int firstUp)
    {
        ScanEvent kind = events.Kind(index);
        What = (int)kind;
        Subject = events.Subject(index);
        Detail = events.Detail(index);
        Source = SourceOf(kind);
        FirstUp = kind == ScanEvent.AlarmRaised && firstUp == Subject;
    }

    /// <summary>Fills in something that happened to the board.</summary>
    public void Fill(int what, int subject, int detail)
    {
        What = what;
        Subject = subject;
        Detail = detail;
        Source = LogSource.Controller;
        FirstUp = false;
    }

    /// <summary>Whether an event of a scan is worth an entry: what alarms and persons do, and phases but for the usual turn of rest and dose, which would soon push everything else out.</summary>
    public static bool IsKept(ScanEvents events, int index)
    {
        switch (events.Kind(index))
        {
            case ScanEvent.PhaseChanged:
                return !IsUsual((Phase)events.Subject(index)) || !IsUsual((Phase)events.Detail(index));
            case ScanEvent.AlarmRaised:
            case ScanEvent.AlarmEnded:
            case ScanEvent.LatchCleared:
            case ScanEvent.SwitchFound:
            case ScanEvent.PressObeyed:
            case ScanEvent.PressRefused:
            case ScanEvent.AlarmSuppressed:
            case ScanEvent.SuppressionEnded:
            case ScanEvent.AlarmShelved:
            case ScanEvent.ShelvingEnded:
            case ScanEvent.TakenOutOfService:
            case ScanEvent.PutIntoService:
            case ScanEvent.SensorsDisagree:
                return true;
            default:
                return false;
        }
    }

    internal void Write(byte[] bytes)
    {
        bytes[0] = (byte)What;
        bytes[1] = (byte)Source;
        bytes[2] = (byte)((HasWallTime ? WallTimeFlag : 0) | (FirstUp ? FirstUpFlag : 0));
        bytes[3] = (byte)Subject;
        ByteOrder.Put(bytes, 4, Sequence);
        ByteOrder.Put(bytes, 8, (uint)UptimeS);
        ByteOrder.Put(bytes, 12, (uint)UptimeMs);
        ByteOrder.Put(bytes, 16, HasWallTime ? WallTimeS : 0);
        ByteOrder.Put(bytes, 20, (uint)Detail);
        ByteOrder.Put(bytes, CheckedLength, Crc32.Compute(bytes, 0, CheckedLength));
        ByteOrder.Put(bytes, CheckedLength + 4, Finish);
    }

    /// <summary>Reads an entry.</summary>
    /// <returns>Whether it is whole; if not, it holds nonsense.</returns>
    internal bool Read(byte[] bytes, int at)
    {
        What = bytes[at];
        Source = (LogSource)bytes[at + 1];
        HasWallTime = (bytes[at + 2] & WallTimeFlag) != 0;
        FirstUp = (bytes[at + 2] & FirstUpFlag) != 0;
        Subject = bytes[at + 3];
        Sequence = ByteOrder.Get(bytes, at + 4);
        UptimeS = (int)ByteOrder.Get(bytes, at + 8);
        UptimeMs = (int)ByteOrder.Get(bytes, at + 12);
        WallTimeS = ByteOrder.Get(bytes, at + 16);
        Detail = (int)ByteOrder.Get(bytes, at + 20);
        return ByteOrder.Get(bytes, at + CheckedLength) == Crc32.Compute(bytes, at, CheckedLength);
    }

    internal static bool IsFinished(byte[] bytes, int at) => ByteOrder.Get(bytes, at + CheckedLength + 4) == Finish;

    private static bool IsUsual(Phase phase) => phase == Phase.Rest || phase == Phase.Dose;

    private static LogSource SourceOf(ScanEvent kind)
    {
        switch (kind)
        {
            case ScanEvent.PressObeyed:
            case ScanEvent.PressRefused:
                return LogSource.Button;
            case ScanEvent.AlarmShelved:
            case ScanEvent.TakenOutOfService:
            case ScanEvent.PutIntoService:
                return LogSource.Bench;
            default:
                return LogSource.Controller;
        }
    }
}
