using LubeController.Board;

namespace LubeController.Analysis.PowerCuts;

/// <summary>Tells the kinds of writes of one start apart, by block and by what the main loop is at.</summary>
internal sealed class WriteKinds(MemoryLayout layout)
{
    private int _bootWrites;
    private int _settingsWrites;

    /// <summary>The board starts.</summary>
    public void Begin() => _bootWrites = 0;

    /// <summary>Settings are stored.</summary>
    public void BeginSettings() => _settingsWrites = 0;

    /// <summary>The kind of the next write.</summary>
    /// <param name="block">The block.</param>
    /// <param name="program">Whether it adds to a block rather than rewrites it.</param>
    /// <param name="erased">Whether the block is erased.</param>
    /// <param name="loop">The main loop, once it has started.</param>
    public WriteKind Next(int block, bool program, bool erased, MainLoop? loop)
    {
        switch (layout.KindOf(block))
        {
            case BlockKind.Settings:
                return _settingsWrites++ % 2 == 0 ? WriteKind.Settings : WriteKind.SettingsMirror;
            case BlockKind.Boot:
                _bootWrites++;
                return loop != null ? WriteKind.BootFault : _bootWrites == 1 ? WriteKind.BootStart : WriteKind.BootTold;
            case BlockKind.State:
                return loop == null ? WriteKind.StateStart : loop.Saves.IntervalIsOver ? WriteKind.StateInterval : WriteKind.StateEvent;
            default:
                return program ? WriteKind.LogEntry : erased ? WriteKind.LogTurn : WriteKind.LogWrap;
        }
    }
}
