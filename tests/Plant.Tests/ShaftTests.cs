using System;
using CsCheck;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class ShaftTests
{
    [Fact]
    public void A_steady_shaft_pulses_at_speed_times_pulses_per_revolution()
    {
        LubricationSystem system = With(new ShaftDescription { PulsesPerRevolution = 4, InitialSpeedRevPerS = 2.5 });

        Assert.Equal(0, system.ShaftPulsesAt(99_999));
        Assert.Equal(1, system.ShaftPulsesAt(100_001));
        Assert.Equal(36_000, system.ShaftPulsesAt(3_600_000_000));
        Assert.InRange(system.TimeOfShaftPulseUs(10), 1_000_000, 1_000_001);
        Assert.InRange(system.LastShaftPulseUs(1_050_000), 1_000_000, 1_000_001);
        Assert.Equal(-1, system.LastShaftPulseUs(50_000));
        Assert.Equal(long.MaxValue, system.NextEventUs);
    }

    [Fact]
    public void A_ramp_turns_by_the_mean_of_its_two_speeds()
    {
        LubricationSystem system = With(new ShaftDescription { PulsesPerRevolution = 1000, InitialSpeedRevPerS = 1 });
        system.AdvanceTo(1_000_000);
        system.SetShaftSpeed(5, rampS: 10);
        system.AdvanceTo(6_000_000);
        Assert.Equal(3, system.ShaftSpeedRevPerS, 12);
        Assert.Equal(1 + 10, system.ShaftRevolutions, 9);
        system.AdvanceTo(12_000_000);
        Assert.Equal(1 + 30 + 5, system.ShaftRevolutions, 9);
        Assert.InRange(system.ShaftPulsesAt(12_000_001), 35_999, 36_000);
    }

    [Fact]
    public void A_standing_shaft_never_pulses_and_a_stopping_one_only_while_it_turns()
    {
        LubricationSystem system = With(new ShaftDescription { PulsesPerRevolution = 1, InitialSpeedRevPerS = 2 });
        system.SetShaftSpeed(0, rampS: 10);

        Assert.Equal(9, system.ShaftPulsesAt(9_000_000));
        Assert.InRange(system.ShaftPulsesAt(3_600_000_000), 9, 10);
        Assert.Equal(long.MaxValue, system.TimeOfShaftPulseUs(11));
        system.AdvanceTo(20_000_000);
        Assert.Equal(0, system.ShaftSpeedRevPerS);
    }

    [Fact]
    public void Pulses_shorter_than_the_least_width_are_not_counted()
    {
        // 10 pulses a revolution, on for 0.2 of the period: 1 ms is reached at 20 rev/s.
        var shaft = new ShaftDescription { PulsesPerRevolution = 10, InitialSpeedRevPerS = 19, Duty = 0.2, MinimumPulseWidthUs = 1000 };
        LubricationSystem system = With(shaft);
        Assert.InRange(system.ShaftPulsesAt(10_000_001), 1_899, 1_900);
        Assert.Equal(0, With(shaft with { InitialSpeedRevPerS = 21 }).ShaftPulsesAt(10_000_000));

        // 19 to 29 rev/s in 10 s: what is counted ends after 1 s, at 20 rev/s, and 19.5 revolutions.
        system.SetShaftSpeed(29, rampS: 10);
        Assert.InRange(system.ShaftPulsesAt(10_000_000), 194, 195);
        Assert.Equal(long.MaxValue, system.TimeOfShaftPulseUs(196));
        system.AdvanceTo(10_000_000);
        system.SetShaftSpeed(10);
        Assert.InRange(system.ShaftPulsesAt(11_000_000), 294, 295);
    }

    [Fact]
    public void A_lost_switch_gives_no_pulses_until_it_is_healed()
    {
        LubricationSystem system = With(new ShaftDescription { PulsesPerRevolution = 1, InitialSpeedRevPerS = 10 });
        system.AdvanceTo(1_050_000);
        system.ApplyFault(ShaftFaults.SwitchLost);
        Assert.Equal(10, system.ShaftPulsesAt(60_000_000));
        Assert.InRange(system.LastShaftPulseUs(60_000_000), 1_000_000, 1_000_001);
        Assert.Equal(long.MaxValue, system.TimeOfShaftPulseUs(11));

        system.AdvanceTo(60_050_000);
        system.HealFault(ShaftFaults.SwitchLost);
        Assert.Equal(600.5, system.ShaftRevolutions, 9);
        Assert.Equal(20, system.ShaftPulsesAt(61_060_000));
    }

    [Fact]
    public void The_time_of_a_pulse_is_the_first_microsecond_at_which_the_count_holds_it() =>
        Gen.Select(
            Gen.Int[1, 60],
            Gen.Double[0, 100],
            Gen.Double[0, 100],
            Gen.Double[0, 20],
            Gen.Long[0, 30_000_000],
            Gen.Long[0, 2000],
            Gen.Int[0, 500]).Sample((pulses, speed, target, ramp, change, n, width) =>
            {
                LubricationSystem system = With(new ShaftDescription
                {
                    PulsesPerRevolution = pulses,
                    InitialSpeedRevPerS = speed,
                    MinimumPulseWidthUs = width,
                });
                system.AdvanceTo(change);
                system.SetShaftSpeed(target, ramp);
                long count = system.ShaftPulsesAt(change) + 1 + n;
                long time = system.TimeOfShaftPulseUs(count);
                if (time == long.MaxValue)
                {
                    Assert.True(system.ShaftPulsesAt(1_000_000_000_000) < count);
                    return;
                }

                Assert.True(system.ShaftPulsesAt(time) >= count);
                Assert.True(time == change || system.ShaftPulsesAt(time - 1) < count);
                Assert.Equal(system.TimeOfShaftPulseUs(system.ShaftPulsesAt(time)), system.LastShaftPulseUs(time));
            });

    [Fact]
    public void Plants_without_a_shaft_say_so()
    {
        var system = new LubricationSystem(Plants.Twin(3), 1);
        Assert.False(system.HasShaft);
        Assert.Contains("no shaft", Assert.Throws<InvalidOperationException>(() => system.SetShaftSpeed(1)).Message, StringComparison.Ordinal);
    }

    private static LubricationSystem With(ShaftDescription shaft) => new(Plants.Twin(3) with { Shaft = shaft }, 1);
}
