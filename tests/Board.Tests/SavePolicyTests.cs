using LubeController.Core;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>When a save is due; what is saved at once is told by the tests of the main loop.</summary>
public sealed class SavePolicyTests
{
    private readonly Inputs _inputs = new();
    private readonly Controller _core;

    public SavePolicyTests() => _core = new Controller(_inputs, new Outputs(), new Settings(), null);

    [Fact]
    public void It_is_due_by_time_and_not_put_off_by_a_save_for_another_reason()
    {
        var policy = new SavePolicy(5_000);
        policy.Begin(_core);
        policy.Advance(3_000);
        policy.Saved(_core);
        policy.Advance(1_999);
        Assert.False(policy.IsDue(_core));
        Assert.Equal(1, policy.RemainingMs);
        policy.Advance(1);
        Assert.True(policy.IsDue(_core));
        policy.Saved(_core);
        Assert.False(policy.IsDue(_core));
        Assert.Equal(5_000, policy.RemainingMs);
    }

    [Fact]
    public void A_long_time_does_not_overflow_and_a_shorter_interval_is_over_at_once()
    {
        var policy = new SavePolicy(int.MaxValue);
        policy.Begin(_core);
        policy.Advance(int.MaxValue);
        policy.Advance(int.MaxValue);
        Assert.True(policy.IntervalIsOver);
        policy.SetInterval(0);
        Assert.Equal((true, 1), (policy.IntervalIsOver, policy.RemainingMs));
    }

    [Fact]
    public void Another_policy_goes_on_from_what_one_told()
    {
        var one = new SavePolicy(5_000);
        one.Begin(_core);
        one.Advance(1_234);
        int[] told = new int[SavePolicy.NumberCount];
        one.CopyTo(told);
        var other = new SavePolicy(5_000);
        other.CopyFrom(told);
        Assert.False(other.IsDue(_core));
        Assert.Equal(3_766, other.RemainingMs);
        for (int index = 0; index < told.Length; index++)
        {
            int[] altered = [.. told];
            altered[index] += 5_000;
            other.CopyFrom(altered);
            Assert.True(other.IsDue(_core), $"number {index}");
        }
    }

    [Fact]
    public void What_a_person_does_to_an_alarm_is_saved_at_once()
    {
        var policy = new SavePolicy(60_000);
        _core.NoteStorageCorrupt();
        _core.Scan(0);
        policy.Begin(_core);
        _core.Scan(500);
        _inputs.SetDown(Button.Acknowledge, true);
        _core.Scan(600);
        Assert.False(policy.IsDue(_core));
        _core.Scan(1_200);
        Assert.False(_core.Alarms.AnyUnseen);
        SavedOnce(policy);
        Assert.True(_core.Shelve(AlarmId.StorageCorrupt, 60_000));
        SavedOnce(policy);
        _core.Unshelve(AlarmId.StorageCorrupt);
        SavedOnce(policy);
        _core.SetOutOfService(AlarmId.StorageCorrupt, true);
        SavedOnce(policy);
    }

    private void SavedOnce(SavePolicy policy)
    {
        Assert.True(policy.IsDue(_core));
        policy.Saved(_core);
        Assert.False(policy.IsDue(_core));
    }
}
