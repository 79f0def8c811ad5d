using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>The one door for state, and what does not fit through it.</summary>
public sealed class StateTests
{
    [Fact]
    public void A_state_restored_into_a_new_core_is_saved_as_the_same_bytes()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulse().Run(1_230);
        byte[] state = bench.Save();
        var core = new Controller(new Inputs(), new Outputs(), TestSettings.Make(), null);
        Assert.True(core.RestoreState(state));
        var again = new byte[core.StateLength];
        Assert.Equal(state.Length, core.SaveState(again));
        Assert.Equal(state, again);
        Assert.Equal(Phase.Dose, core.Phase);
        Assert.Equal(1, core.DoseEdges);
    }

    [Fact]
    public void A_state_fits_a_longer_buffer()
    {
        CoreBench bench = new CoreBench().ToRest();
        var buffer = new byte[bench.Core.StateLength + 100];
        Assert.Equal(bench.Core.StateLength, bench.Core.SaveState(buffer));
        Assert.True(new Controller(new Inputs(), new Outputs(), TestSettings.Make(), null).RestoreState(buffer));
    }

    [Fact]
    public void A_buffer_one_byte_too_short_is_neither_written_nor_read()
    {
        CoreBench bench = new CoreBench().ToRest();
        byte[] state = bench.Save();
        Assert.Equal(0, bench.Core.SaveState(new byte[state.Length - 1]));
        Unchanged(bench, state[..^1]);
        Unchanged(bench, []);
        Unchanged(bench, state[..11]);
    }

    [Fact]
    public void Foreign_bytes_are_refused_and_change_nothing()
    {
        CoreBench bench = new CoreBench().ToRest();
        int length = bench.Core.StateLength;
        Unchanged(bench, new byte[length]);
        Unchanged(bench, Enumerable.Repeat((byte)0xFF, length).ToArray());
    }

    [Fact]
    public void A_state_with_any_byte_changed_is_refused_and_changes_nothing()
    {
        CoreBench bench = new CoreBench().ToDose();
        byte[] state = bench.Save();
        bench.Pulses(3);
        for (int at = 0; at < state.Length; at++)
        {
            byte[] wrong = (byte[])state.Clone();
            wrong[at] ^= 0x10;
            Unchanged(bench, wrong);
        }

        Assert.True(bench.Core.RestoreState(state));
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void A_state_of_a_core_with_another_rule_is_refused()
    {
        CoreBench with = new CoreBench(null, new FakeRule()).ToRest();
        CoreBench without = new CoreBench().ToRest();
        Assert.NotEqual(with.Core.StateLength, without.Core.StateLength);
        Unchanged(without, with.Save());
        Unchanged(with, without.Save());
    }

    [Fact]
    public void A_rule_with_more_state_than_a_core_can_hold_is_run_but_never_saved()
    {
        CoreBench bench = new CoreBench(null, new WideRule()).ToRest();
        Assert.Equal(0, bench.Core.StateLength);
        Assert.Equal(0, bench.Core.SaveState(new byte[10_000]));
        Assert.False(bench.Core.RestoreState(new byte[10_000]));
    }

    [Fact]
    public void Saving_in_quiet_time_does_not_change_what_follows()
    {
        CoreBench plain = new CoreBench().ToRest();
        CoreBench saving = new CoreBench().ToRest();
        for (int tick = 0; tick < 6_500; tick++)
        {
            plain.Run(10);
            saving.Run(10);
            saving.Save();
            Assert.Equal(plain.Phase, saving.Phase);
            Assert.Equal(plain.Core.NextDeadlineMs, saving.Core.NextDeadlineMs);
        }

        Assert.Equal(plain.Save(), saving.Save());
    }

    [Fact]
    public void A_stream_hands_numbers_and_flags_through_in_either_direction()
    {
        int[] numbers = [0, 1, -1, int.MinValue, int.MaxValue, 0x12345678];
        var buffer = new byte[(numbers.Length * 4) + 2];
        var stream = new StateStream();
        stream.Open(buffer, true);
        foreach (int number in numbers)
            Assert.Equal(number, stream.Number(number));
        Assert.True(stream.Flag(true));
        Assert.False(stream.Flag(false));
        Assert.Equal(buffer.Length, stream.Position);
        Assert.True(stream.Fits);
        Assert.Equal([0x78, 0x56, 0x34, 0x12, 1, 0], buffer[20..]);
        stream.Open(buffer, false);
        foreach (int number in numbers)
            Assert.Equal(number, stream.Number(~number));
        Assert.True(stream.Flag(false));
        Assert.False(stream.Flag(true));
    }

    [Fact]
    public void Beyond_its_buffer_a_stream_hands_values_through_unchanged()
    {
        var stream = new StateStream();
        foreach (bool writing in new[] { true, false })
        {
            byte[] buffer = [9, 9, 9, 9, 9];
            stream.Open(buffer, writing);
            Assert.Equal(7, writing ? stream.Number(7) : stream.Number(7) - 0x09090909 + 7);
            Assert.True(stream.Fits);
            Assert.Equal(4, stream.Position);
            Assert.Equal(5, stream.Number(5));
            Assert.False(stream.Fits);
            Assert.True(stream.Flag(true));
            Assert.False(stream.Flag(false));
            Assert.Equal(4, stream.Position);
            Assert.Equal(9, buffer[4]);
        }
    }

    private static void Unchanged(CoreBench bench, byte[] wrong)
    {
        byte[] before = bench.Save();
        Assert.False(bench.Core.RestoreState(wrong));
        Assert.Equal(before, bench.Save());
    }

    private sealed class WideRule : IRestRule
    {
        public int SettingCount => 0;

        public SettingSpec Setting(int index) => throw new ArgumentOutOfRangeException(nameof(index));

        public void Set(int index, int value) => throw new ArgumentOutOfRangeException(nameof(index));

        public void Begin()
        {
        }

        public void Advance(int elapsedMs, int shaftPulses, Inputs held)
        {
        }

        public int RemainingMs(Inputs inputs) => 1_000;

        public int RemainingShaftPulses(Inputs inputs) => Saturating.Never;

        public void Transfer(StateStream stream)
        {
            for (int number = 0; number < 2_000; number++)
                stream.Number(number);
        }
    }
}
