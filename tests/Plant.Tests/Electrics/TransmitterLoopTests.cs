using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Inputs;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using Xunit;

namespace LubeController.Plant.Tests.Electrics;

/// <summary>What the input makes of the pressure transmitter's 4-20 mA loop: 4 mA no pressure, 20 mA the range of 100 bar.</summary>
public sealed class TransmitterLoopTests
{
    private const double Bar = Plants.Bar;

    private static readonly PlantDescription Fitted = Plants.Twin(3) with
    {
        Transmitter = new PressureTransmitterDescription
        {
            RangePa = 100 * Bar,
            Loop = new TransmitterLoopDescription { SupplyV = 24, LeastVoltageV = 10, LoopOhms = 250 },
        },
    };

    // Currents by NAMUR NE 43: failure at or below 3.6 mA and at or above 21 mA.
    [Theory]
    [InlineData("transmitter-loop-broken", -25, -25)]
    [InlineData("transmitter-fails-low", -25, -2.5)]
    [InlineData("transmitter-fails-high", 106.25, 200)]
    [InlineData("transmitter-loop-shorted", 106.25, 200)]
    public void A_fault_is_told_by_a_current_outside_what_a_sound_transmitter_drives(string name, double lowBar, double highBar)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        LubricationSystem system = Fitted.Running();
        system.AdvanceTo(5_000_000);
        double sound = system.TransmitterPressurePa;
        Assert.InRange(sound, 0, 100 * Bar);

        system.ApplyFault(kind);
        Assert.InRange(system.TransmitterPressurePa, lowBar * Bar, highBar * Bar);
        Assert.True(system.TookEffect(kind));
        system.HealFault(kind);
        Assert.Equal(sound, system.TransmitterPressurePa);
    }

    [Theory]
    [InlineData("transmitter-loop-broken", Ne43Reading.FailureLow)]
    [InlineData("transmitter-fails-low", Ne43Reading.FailureLow)]
    [InlineData("transmitter-fails-high", Ne43Reading.FailureHigh)]
    [InlineData("transmitter-loop-shorted", Ne43Reading.FailureHigh)]
    [InlineData("transmitter-wrong", Ne43Reading.Valid)]
    public void What_the_current_means_by_NE_43_is_told(string name, Ne43Reading meaning)
    {
        Fault kind = FaultCatalogue.Find(name)!;
        LubricationSystem system = Fitted.Running();
        Assert.Equal(Ne43Reading.Valid, system.TransmitterMeaning);
        system.ApplyFault(kind);
        Assert.Equal(meaning, system.TransmitterMeaning);
        system.HealFault(kind);
        Assert.Equal(Ne43Reading.Valid, system.TransmitterMeaning);
    }

    // (24 V - 10 V) / (250 + extra) ohm: 3.7 mA, between failure and valid; 3.5 mA.
    [Theory]
    [InlineData(3534, Ne43Reading.UnderRange)]
    [InlineData(3750, Ne43Reading.FailureLow)]
    public void A_loop_too_resistive_for_4_mA_reads_below_what_is_valid(double ohms, Ne43Reading meaning)
    {
        LubricationSystem system = Fitted.Running();
        system.ApplyFault(PressureReadingFaults.LoopResistive, value: ohms);
        Assert.Equal(meaning, system.TransmitterMeaning);
    }

    // (24 V - 10 V) / (250 + 1000) ohm = 11.2 mA: 45 bar of 100.
    [Fact]
    public void A_resistance_in_the_loop_caps_the_reading_at_the_current_for_which_the_supply_suffices()
    {
        LubricationSystem system = Blocked();
        Assert.Equal(100 * Bar, system.TransmitterPressurePa);
        system.ApplyFault(PressureReadingFaults.LoopResistive, value: 1000);

        Assert.Equal(45 * Bar, system.TransmitterPressurePa, 1);
    }

    [Fact]
    public void Below_that_current_the_resistance_changes_nothing_and_has_not_taken_effect()
    {
        LubricationSystem system = Fitted.Running();
        system.ApplyFault(PressureReadingFaults.LoopResistive, value: 100);
        system.AdvanceTo(5_000_000);
        system.NoteFaultEffects();

        Assert.False(system.TookEffect(PressureReadingFaults.LoopResistive));
        Assert.Equal(system.LinePressurePa, system.TransmitterPressurePa, 1);
    }

    // (24 V / 2 - 10 V) / 250 ohm = 8 mA: 25 bar of 100.
    [Fact]
    public void Half_the_control_voltage_starves_the_loop()
    {
        LubricationSystem system = Blocked();
        system.ApplyFault(SupplyFaults.Low, value: 0.5);

        Assert.Equal(25 * Bar, system.TransmitterPressurePa, 1);
        Assert.True(system.TookEffect(SupplyFaults.Low));
    }

    [Fact]
    public void Of_two_faults_the_one_nearest_to_the_input_counts_until_it_is_healed()
    {
        LubricationSystem system = Fitted.Running();
        system.ApplyFault(PressureReadingFaults.FailsHigh);
        system.ApplyFault(PressureReadingFaults.LoopBroken);
        Assert.Equal(-25 * Bar, system.TransmitterPressurePa, 1);
        system.HealFault(PressureReadingFaults.LoopBroken);
        Assert.True(system.TransmitterPressurePa > 106 * Bar);
    }

    [Fact]
    public void A_loop_that_cannot_be_is_refused()
    {
        PlantDescription plant = Fitted with { Transmitter = Fitted.Transmitter! with { Loop = new TransmitterLoopDescription { SupplyV = 12, LeastVoltageV = 12 } } };
        Assert.Contains(PlantCheck.Refusals(plant), refusal => refusal.Path == "pressure-transmitter.least-voltage");
        Assert.Equal(["control-supply.stops-below"], PlantCheck.Refusals(Fitted with { ControlSupply = new() { LogicOffV = 18 } }).Select(refusal => refusal.Path));
    }

    private static LubricationSystem Blocked()
    {
        LubricationSystem system = Fitted.Running();
        system.ApplyFault(DividerFaults.InletBlocked);
        system.AdvanceTo(60_000_000);
        return system;
    }
}
