using LubeController.Plant.Inputs;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class InputTests
{
    [Theory]
    [InlineData(UndefinedPolicy.Low, false, false)]
    [InlineData(UndefinedPolicy.High, true, true)]
    [InlineData(UndefinedPolicy.Hold, false, true)]
    public void The_undefined_zone_is_resolved_as_chosen(UndefinedPolicy policy, bool afterOff, bool afterOn)
    {
        var input = new DigitalInput(InputType.Type3, policy, 1);
        input.Read(0, 0);
        Assert.Equal(afterOff, input.Read(8, 1.8e-3));
        Assert.Equal(InputReading.Undefined, input.Reading);
        Assert.True(input.Read(24, 3e-3));
        Assert.Equal(afterOn, input.Read(8, 1.8e-3));
    }

    [Fact]
    public void A_seeded_level_is_drawn_on_entry_and_kept_until_the_zone_is_left()
    {
        var input = new DigitalInput(InputType.Type3, UndefinedPolicy.Seeded, 11);
        var again = new DigitalInput(InputType.Type3, UndefinedPolicy.Seeded, 11);
        int on = 0;
        for (int entry = 0; entry < 1000; entry++)
        {
            bool level = input.Read(8, 1.8e-3);
            Assert.Equal(level, again.Read(8, 1.8e-3));
            Assert.Equal(level, input.Read(9, 1.9e-3));
            on += level ? 1 : 0;
            input.Read(0, 0);
            again.Read(0, 0);
        }

        Assert.InRange(on, 400, 600);
    }

    [Fact]
    public void A_floating_terminal_reads_off() =>
        Assert.False(new DigitalInput(InputType.Type1, UndefinedPolicy.High, 1).Read(double.NaN, 0));

    [Fact]
    public void A_current_loop_tells_its_value_and_saturates()
    {
        var loop = new CurrentLoop(new CurrentLoopDescription { LowValue = 0, HighValue = 400e5 });
        Assert.Equal(12e-3, loop.CurrentA(200e5), 12);
        Assert.Equal(200e5, loop.ValueOf(12e-3), 3);
        Assert.Equal(20.5e-3, loop.CurrentA(900e5), 12);
        Assert.Equal(3.8e-3, loop.CurrentA(-900e5), 12);
        Assert.Equal(Ne43Reading.Valid, Ne43.Read(loop.CurrentA(900e5)));
    }

    [Theory]
    [InlineData(24, 0, 20e-3)]
    [InlineData(14, 0, 16e-3)]
    [InlineData(24, 650, 14.0 / 900)]
    [InlineData(8, 0, 0)]
    public void Too_low_a_supply_or_too_much_resistance_limits_the_current(double supplyV, double extraOhms, double expectedA)
    {
        var loop = new CurrentLoop(new CurrentLoopDescription { LowValue = 0, HighValue = 1 }) { SupplyV = supplyV, ExtraOhms = extraOhms };
        Assert.Equal(expectedA, loop.CurrentA(1), 12);
    }

    [Theory]
    [InlineData(LoopFault.WireBroken, 0, Ne43Reading.FailureLow)]
    [InlineData(LoopFault.Shorted, 30e-3, Ne43Reading.FailureHigh)]
    [InlineData(LoopFault.DrivesLow, 3.5e-3, Ne43Reading.FailureLow)]
    [InlineData(LoopFault.DrivesHigh, 22e-3, Ne43Reading.FailureHigh)]
    [InlineData(LoopFault.None, 12e-3, Ne43Reading.Valid)]
    public void Faults_of_a_current_loop_are_read_as_failures(LoopFault fault, double currentA, Ne43Reading reading)
    {
        var loop = new CurrentLoop(new CurrentLoopDescription { LowValue = 0, HighValue = 1 }) { Fault = fault };
        Assert.Equal(currentA, loop.CurrentA(0.5), 12);
        Assert.Equal(reading, Ne43.Read(loop.CurrentA(0.5)));
    }
}
