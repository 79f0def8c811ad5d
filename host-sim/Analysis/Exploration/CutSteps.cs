using System;
using System.Globalization;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>Script steps that cut the power, tear a save, or take blocks of the memory away.</summary>
/// <param name="steps">Where they are added.</param>
/// <param name="stepMs">Time of a step of the exploration, milliseconds.</param>
/// <param name="periodMs">Scan period of the script, milliseconds.</param>
internal sealed class CutSteps(HandSteps steps, int stepMs, int periodMs)
{
    // In the payload of a boot record.
    private const int FirstBit = 160;
    private const int Bits = 64;

    // A board that restarts by itself is away for a while, in which the core lives through nothing.
    private long _awayMs;
    private bool _settingsLost;
    private int _flips;

    /// <summary>Time of the scan of a step, milliseconds.</summary>
    public long TimeOf(int index) => ((long)index * stepMs) + _awayMs;

    /// <summary>Cuts the power after the scan of a step.</summary>
    public void Cut(PowerCut cut, int index)
    {
        long quarter = periodMs / 4;
        long scan = TimeOf(index);
        switch (cut)
        {
            case PowerCut.None:
                return;
            case PowerCut.CutInSave:
                // The first write after the step's scan is the save that is due.
                steps.Add(Math.Max(0, scan - quarter), "fault: storage-write-torn");
                ComeBack(scan, index);
                return;
            case PowerCut.LoopFault:
                steps.Add(scan + quarter, "fault: loop-throws");
                steps.Add(TimeOf(index + 1) + Math.Min(quarter, Bench.RestartMs / 2), "heal: loop-throws");
                MendSettings(scan + quarter);
                ComeBack(TimeOf(index + 1), index);
                return;
            default:
                steps.Add(scan + quarter, "power: off");
                MendSettings(scan + quarter);
                if (cut == PowerCut.SettingsLost)
                    FlipSettings(scan + quarter);
                if (cut == PowerCut.BlockLost)
                    FlipBootRecord(scan + quarter);
                steps.Add(scan + quarter + (periodMs / 8), "power: on");
                return;
        }
    }

    /// <summary>The board is away from a time on; the step after this one comes with its first scan.</summary>
    private void ComeBack(long from, int index)
    {
        long first = (from + Bench.RestartMs + stepMs - 1) / stepMs * stepMs;
        _awayMs += first - TimeOf(index + 1);
    }

    private void MendSettings(long at)
    {
        if (_settingsLost)
            FlipSettings(at);
    }

    /// <summary>A bit that is turned round twice stands as it stood.</summary>
    private void FlipSettings(long at)
    {
        _settingsLost = !_settingsLost;
        steps.Add(at, "fault: storage-bit-flip, part: block-0");
        steps.Add(at, "fault: storage-bit-flip, part: block-1");
    }

    /// <summary>Both blocks, since only one may have been written yet; another bit each time, since a block may not have been written since.</summary>
    private void FlipBootRecord(long at)
    {
        string bit = (FirstBit + _flips++ % Bits).ToString(CultureInfo.InvariantCulture);
        steps.Add(at, $"fault: storage-bit-flip, part: block-2, magnitude: {bit}");
        steps.Add(at, $"fault: storage-bit-flip, part: block-3, magnitude: {bit}");
    }
}
