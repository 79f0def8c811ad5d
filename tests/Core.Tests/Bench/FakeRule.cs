using System;

namespace LubeController.Core.Tests;

/// <summary>A rest rule that answers what the test says; by default the time that is left of one minute of rest.</summary>
internal sealed class FakeRule : IRestRule
{
    public int ElapsedMs { get; private set; }

    public int Pulses { get; private set; }

    public int Begins { get; private set; }

    public Func<FakeRule, Inputs, int> Remaining { get; set; } = (rule, _) => Math.Max(0, 60_000 - rule.ElapsedMs);

    public Func<FakeRule, Inputs, int> RemainingPulses { get; set; } = (_, _) => Saturating.Never;

    public Action<string> OnCall { get; set; } = _ => { };

    public int SettingCount => 0;

    public SettingSpec Setting(int index) => throw new ArgumentOutOfRangeException(nameof(index));

    public void Set(int index, int value) => throw new ArgumentOutOfRangeException(nameof(index));

    public void Begin()
    {
        OnCall(nameof(Begin));
        Begins++;
        ElapsedMs = 0;
        Pulses = 0;
    }

    public void Advance(int elapsedMs, int shaftPulses, Inputs held)
    {
        OnCall(nameof(Advance));
        ElapsedMs = Saturating.Add(ElapsedMs, elapsedMs);
        Pulses = Saturating.Add(Pulses, shaftPulses);
    }

    public int RemainingMs(Inputs inputs)
    {
        OnCall(nameof(RemainingMs));
        return Remaining(this, inputs);
    }

    public int RemainingShaftPulses(Inputs inputs)
    {
        OnCall(nameof(RemainingShaftPulses));
        return RemainingPulses(this, inputs);
    }

    public void Transfer(StateStream stream)
    {
        OnCall(nameof(Transfer));
        ElapsedMs = stream.Number(ElapsedMs);
        Pulses = stream.Number(Pulses);
    }
}
