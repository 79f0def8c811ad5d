using System;
using LubeController.Plant.Description;
using LubeController.Plant.Pistons;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

public sealed class ControlSupplyTests
{
    private const long Ms = 1000;

    private static readonly PlantDescription Plain = Plants.Twin(3) with { ControlSupply = new SupplyDescription { HoldUpUs = 10 * Ms } };

    [Theory]
    [InlineData(9, true)]
    [InlineData(11, false)]
    public void The_hold_up_time_carries_the_logic_over_short_drop_outs_only(int ms, bool powered)
    {
        var system = new LubricationSystem(Plain, 1);
        system.AdvanceTo(100 * Ms);
        system.ApplyFault(SupplyFaults.Low);
        system.AdvanceTo((100 + ms) * Ms);

        Assert.Equal(powered, system.ControlPowered);
        Assert.Equal(0, system.ControlVoltageV);
        system.HealFault(SupplyFaults.Low);
        Assert.True(system.ControlPowered);
        Assert.Equal(24, system.ControlVoltageV);
    }

    [Fact]
    public void A_brown_out_stops_the_logic_below_its_limit_and_starts_it_only_above_the_other()
    {
        var system = new LubricationSystem(Plain, 1);
        system.ApplyFault(SupplyFaults.Low, value: 15.1 / 24);
        system.AdvanceTo(1000 * Ms);
        Assert.True(system.ControlPowered);

        system.AdjustFault(SupplyFaults.Low, "", 14.9 / 24);
        Assert.Equal(1010 * Ms, system.NextSupplyUs);
        system.AdvanceTo(1010 * Ms);
        Assert.False(system.ControlPowered);
        Assert.True(system.TookEffect(SupplyFaults.Low));

        system.AdjustFault(SupplyFaults.Low, "", 17.9 / 24);
        Assert.False(system.ControlPowered);
        system.AdjustFault(SupplyFaults.Low, "", 18.1 / 24);
        Assert.True(system.ControlPowered);
    }

    [Theory]
    [InlineData(32, true)]
    [InlineData(36, false)]
    public void A_ripple_s_troughs_are_ridden_through_while_they_are_shorter_than_the_hold_up_time(int periodMs, bool powered)
    {
        // Of 36 V peak to peak about 24 V, 21/72 of the period lie between falling below 15 V and coming back to 18 V.
        var system = new LubricationSystem(Plain, 1);
        system.ApplyFault(SupplyFaults.Ripple, value: 36, second: periodMs / 1000.0);
        bool always = true;
        double least = double.MaxValue;
        double most = 0;
        while (system.NextSupplyUs < 1_000_000)
        {
            system.AdvanceTo(system.NextSupplyUs);
            always &= system.ControlPowered;
            least = Math.Min(least, system.ControlVoltageV);
            most = Math.Max(most, system.ControlVoltageV);
        }

        Assert.Equal(powered, always);
        Assert.Equal(6, least, 1e-9);
        Assert.Equal(42, most, 1e-9);
    }

    [Theory]
    [InlineData(SwitchOutput.Pnp, false)]
    [InlineData(SwitchOutput.Namur, true)]
    public void A_switch_without_supply_reads_off_but_a_namur_amplifier_keeps_its_own_voltage(SwitchOutput output, bool on)
    {
        var sensor = new SensorLoopDescription { Switch = new ProximitySwitchDescription { Output = output } };
        var actuated = new CycleSwitchDescription { Name = "s", Section = "1", End = Side.L, TripTravel = 0.1, Sensor = sensor };
        var system = new LubricationSystem(Plain with { CycleSwitches = [actuated] }, 1);
        system.AdvanceTo(1000 * Ms);
        bool before = system.CycleSwitchOn(0);
        system.ApplyFault(SupplyFaults.Low);
        system.AdvanceTo(1005 * Ms);

        Assert.Equal(on, system.CycleSwitchOn(0) == before);
        Assert.Equal(!on, system.TookEffect(SupplyFaults.Low));
    }
}
