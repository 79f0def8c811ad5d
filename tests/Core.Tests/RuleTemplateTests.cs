using CsCheck;
using LubeController.RuleTemplate;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>The rule template: shorter rest above a lubricant temperature.</summary>
public sealed class RuleTemplateTests
{
    private const int WarmAbove = 0;
    private const int ColdRest = 1;
    private const int WarmPace = 2;

    [Fact]
    public void Its_settings_have_units_and_ranges_around_their_presets()
    {
        var rule = new WarmRestRule();
        Assert.Equal(3, rule.SettingCount);
        Assert.Equal(
            [SettingUnit.DeciCelsius, SettingUnit.Milliseconds, SettingUnit.Percent],
            new[] { rule.Setting(WarmAbove).Unit, rule.Setting(ColdRest).Unit, rule.Setting(WarmPace).Unit });
        for (int index = 0; index < rule.SettingCount; index++)
            Assert.InRange(rule.Setting(index).Preset, rule.Setting(index).Minimum, rule.Setting(index).Maximum);
    }

    [Theory]
    [InlineData(450, 1_800_000)]
    [InlineData(451, 900_000)]
    public void With_its_presets_a_warm_rest_is_half_as_long(int temperatureDeciC, int expectedMs)
    {
        var rule = new WarmRestRule();
        rule.Begin();
        Assert.Equal(expectedMs, rule.RemainingMs(new Inputs { TemperatureDeciC = temperatureDeciC }));
        Assert.Equal(Saturating.Never, rule.RemainingShaftPulses(new Inputs()));
    }

    [Fact]
    public void Many_short_steps_come_to_the_same_as_one_long_step() =>
        Property.ForAll(Gen.Select(Gen.Int[0, 90_000].Array[1, 40], Gen.Int[100, 1_000], Gen.Bool), 500, drawn =>
        {
            (int[] steps, int pace, bool warm) = drawn;
            var inputs = new Inputs { TemperatureDeciC = warm ? 600 : 100 };
            WarmRestRule one = Made(pace);
            WarmRestRule many = Made(pace);
            int sum = 0;
            foreach (int step in steps)
            {
                sum += step;
                many.Advance(step, 0, inputs);
            }

            one.Advance(sum, 0, inputs);
            Assert.Equal(one.RemainingMs(inputs), many.RemainingMs(inputs));
            inputs.TemperatureDeciC = warm ? 100 : 600;
            Assert.Equal(one.RemainingMs(inputs), many.RemainingMs(inputs));
        });

    [Fact]
    public void When_the_time_it_names_has_passed_the_rest_is_over_and_not_a_millisecond_earlier() =>
        Property.ForAll(Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[100, 1_000]), 500, drawn =>
        {
            (int cold, int pace) = drawn;
            var inputs = new Inputs { TemperatureDeciC = 100 };
            WarmRestRule rule = Made(pace);
            rule.Advance(cold, 0, inputs);
            inputs.TemperatureDeciC = 600;
            int remaining = rule.RemainingMs(inputs);
            rule.Advance(remaining - 1, 0, inputs);
            Assert.Equal(1, rule.RemainingMs(inputs));
            rule.Advance(1, 0, inputs);
            Assert.Equal(0, rule.RemainingMs(inputs));
            rule.Advance(5_000, 0, inputs);
            Assert.Equal(0, rule.RemainingMs(inputs));
            rule.Begin();
            Assert.True(rule.RemainingMs(inputs) > 0);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(int.MaxValue)]
    public void Its_state_goes_through_the_stream_and_back(int elapsedMs)
    {
        var inputs = new Inputs { TemperatureDeciC = 600 };
        WarmRestRule rule = Made(1_000);
        rule.Advance(elapsedMs, 0, inputs);
        var buffer = new byte[8];
        var stream = new StateStream();
        stream.Open(buffer, true);
        rule.Transfer(stream);
        Assert.Equal(8, stream.Position);
        WarmRestRule other = Made(1_000);
        stream.Open(buffer, false);
        other.Transfer(stream);
        Assert.Equal(rule.RemainingMs(inputs), other.RemainingMs(inputs));
        var again = new byte[8];
        stream.Open(again, true);
        other.Transfer(stream);
        Assert.Equal(buffer, again);
    }

    [Theory]
    [InlineData(200, 40_000)]
    [InlineData(600, 10_000)]
    public void In_a_core_it_decides_the_rest_at_either_temperature(int temperatureDeciC, int expectedMs)
    {
        WarmRestRule rule = Made(400);
        rule.Set(ColdRest, 40_000);
        CoreBench bench = Bench(rule);
        bench.Inputs.TemperatureDeciC = temperatureDeciC;
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        Assert.Equal(expectedMs, bench.RunUntil(Phase.Dose, 100_000));
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void In_a_core_a_change_of_temperature_counts_from_when_it_comes()
    {
        WarmRestRule rule = Made(400);
        rule.Set(ColdRest, 40_000);
        CoreBench bench = Bench(rule);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        bench.Run(20_000);
        bench.Inputs.TemperatureDeciC = 600;
        bench.Scan();
        Assert.Equal(5_000, bench.RunUntil(Phase.Dose, 100_000));
    }

    private static WarmRestRule Made(int pace)
    {
        var rule = new WarmRestRule();
        rule.Set(WarmPace, pace);
        rule.Set(ColdRest, 20_000_000);
        rule.Begin();
        return rule;
    }

    private static CoreBench Bench(WarmRestRule rule) => new(
        settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Rule;
            settings[SettingField.RestFallbackMs] = 30_000;
            settings[SettingField.RuleLongestRestMs] = 60_000;
        },
        rule);
}
