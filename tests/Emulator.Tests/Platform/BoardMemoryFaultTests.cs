using System;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Platform;
using Xunit;

namespace LubeController.Emulator.Tests.Platform;

/// <summary>Faults of the board's memory and what they cost.</summary>
public sealed class BoardMemoryFaultTests
{
    private const long Second = BoardRig.Second;
    private const int RestS = 600;

    /// <summary>The rest begins at 15 s and is saved every 60 s: at 315 s last before the cut save of 375 s.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(100, 0)]
    [InlineData(100, 1)]
    [InlineData(100, 2)]
    public void A_torn_save_takes_the_board_down_and_costs_a_rest_one_save_interval_at_most(double bytes, double rest)
    {
        BoardRig rig = Resting().Fault(320, BoardFaults.StorageWriteTorn, bytes, rest).Run();
        long down = rig.First("output.healthy-relay", 0, 2 * Second);
        long dose = rig.First("output.pump", 1, 16 * Second);

        Assert.InRange(down, 320 * Second, 380 * Second);
        Assert.Equal(down + Second, rig.First("output.healthy-relay", 1, down + 1));
        Assert.InRange(dose - ((15 + RestS) * Second), Second, 61 * Second);
        Assert.Equal(ResetCause.BrownOut, rig.Bench.ResetCause);
        Assert.Equal(-1, rig.First("alarm.storage-corrupt", 1));
        Assert.True(Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    [Fact]
    public void A_turned_bit_is_alarmed_by_the_start_that_reads_it_and_not_before()
    {
        BoardRig cut = Resting().Fault(320, BoardFaults.StorageBitFlip, 200, part: "block-8")
            .At(400, bench => bench.Controls.Power = false).At(410, bench => bench.Controls.Power = true).Run();
        BoardRig uncut = Resting().Fault(320, BoardFaults.StorageBitFlip, 200, part: "block-8").Run();

        Assert.Equal(410 * Second, cut.First("alarm.storage-corrupt", 1));
        Assert.True(Assert.Single(cut.Bench.Platform.FaultLog.Entries).TookEffect);
        Assert.Equal(-1, uncut.First("alarm.storage-corrupt", 1));
        Assert.False(Assert.Single(uncut.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    [Fact]
    public void Worn_blocks_keep_the_state_of_the_last_write_they_took()
    {
        BoardRig rig = Resting().Fault(100, BoardFaults.StorageWorn, 0)
            .At(400, bench => bench.Controls.Power = false).At(410, bench => bench.Controls.Power = true).Run();

        // Saved last at 75 s or so, 60 s into the rest: most of it is owed again from 410 s on.
        Assert.InRange(rig.First("output.pump", 1, 16 * Second), (410 + RestS - 90) * Second, (410 + RestS) * Second);
        Assert.True(Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    [Theory]
    [InlineData("pin-queue-short", "", 15.0, "accepted is 16 to 512 count")]
    [InlineData("scan-delayed", "", 61.0, "delay = 61: accepted is 0.001 to 60 s")]
    [InlineData("loop-hangs", "", 1.0, "accepted is none")]
    [InlineData("storage-bit-flip", "block-99", 1.0, "on 'block-99' in the board")]
    public void What_the_registry_does_not_allow_is_refused_with_a_remedy(string name, string part, double magnitude, string complaint)
    {
        BoardFault kind = BoardFaults.Find(name)!;
        BoardRig rig = Resting();
        ArgumentException reason = Assert.ThrowsAny<ArgumentException>(() => rig.Bench.Platform.ApplyFault(kind, part, magnitude));
        Assert.Contains(complaint, reason.Message, StringComparison.Ordinal);
        Assert.Empty(rig.Bench.Platform.FaultLog.Entries);
    }

    private static BoardRig Resting() => BoardRig.For(1_200, skips: true, set: settings => settings[SettingField.RestMs] = RestS * 1000);
}
