using LubeController.Core;

namespace LubeController.Board.Tests;

/// <summary>How often each block is erased in a year, and how long it lasts. An estimate: a block's sequence number shows what was really written.</summary>
internal sealed class WearEstimate
{
    /// <summary>Erases that a block of NOR flash stands, as is common practice; the data sheet of the part decides.</summary>
    public const int UsualEndurance = 100_000;

    private const int DayMs = 24 * 3600 * 1000;
    private const int YearDays = 365;

    private readonly MemoryLayout _layout;
    private readonly int _slots;

    /// <summary>Makes an estimate for a layout.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="blockLength">Bytes of a block.</param>
    public WearEstimate(MemoryLayout layout, int blockLength)
    {
        _layout = layout;
        _slots = (blockLength / LogEntry.Length) - 1;
    }

    /// <summary>The save interval, milliseconds.</summary>
    public int SaveIntervalMs { get; set; } = 60 * 1000;

    /// <summary>Saves in a day because of a phase, an alarm or venting: four for each dose with a retry, two without.</summary>
    public int EventSavesPerDay { get; set; } = 300;

    /// <summary>Entries of the logbook in a day.</summary>
    public int LogEntriesPerDay { get; set; } = 200;

    /// <summary>Starts in a day.</summary>
    public int StartsPerDay { get; set; } = 10;

    /// <summary>Changes of settings in a day.</summary>
    public int StoresPerDay { get; set; } = 1;

    /// <summary>Erases that a block stands, 1 or more.</summary>
    public int Endurance { get; set; } = UsualEndurance;

    /// <summary>Erases of each block of a kind in a year, rounded up.</summary>
    public int WritesPerBlockPerYear(BlockKind kind)
    {
        switch (kind)
        {
            case BlockKind.Settings:
                return YearDays * StoresPerDay;
            case BlockKind.Boot:
                return SafeDivide.QuotientUp((long)YearDays * StartsPerDay, MemoryLayout.BootBlocks);
            case BlockKind.Logbook:
                return SafeDivide.QuotientUp((long)YearDays * LogEntriesPerDay, _layout.LogBlocks * _slots);
            default:
                return SafeDivide.QuotientUp((long)YearDays * (SafeDivide.QuotientUp(DayMs, SaveIntervalMs) + EventSavesPerDay + StartsPerDay), _layout.StateBlocks);
        }
    }

    /// <summary>Years that the blocks of a kind last, rounded down; saturating.</summary>
    public int YearsOf(BlockKind kind) => SafeDivide.Quotient(Endurance, WritesPerBlockPerYear(kind));

    /// <summary>Fewest blocks of state that last so many years.</summary>
    /// <param name="years">Years, 1 or more.</param>
    public int StateBlocksFor(int years) =>
        SafeDivide.QuotientUp((long)YearDays * years * (SafeDivide.QuotientUp(DayMs, SaveIntervalMs) + EventSavesPerDay + StartsPerDay), Endurance);
}
