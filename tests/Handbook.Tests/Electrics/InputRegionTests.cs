using LubeController.Plant.Circuits;
using LubeController.Plant.Inputs;
using Xunit;

namespace LubeController.Handbook.Tests.Electrics;

/// <summary>Digital and current inputs held against IEC 61131-2 and NAMUR NE 43. The source stands beside each check.</summary>
public sealed class InputRegionTests
{
    private const double Hair = 1e-9;

    /// <summary>
    /// Source: IEC 61131-2, 24 V DC, current sinking. Read: type 1 off 5 V, on 15 V, transition 0.5 mA; type 2 transition
    /// 2 mA; type 3 off 5 V, on 11 V, 2 mA. From memory: type 1 2 mA; type 2 off 5 V, on 11 V, 6 mA; type 3 transition 1.5 mA.
    /// </summary>
    [Theory]
    [InlineData(InputType.Type1, 5, 15, 2e-3, 0.5e-3)]
    [InlineData(InputType.Type2, 5, 11, 6e-3, 2e-3)]
    [InlineData(InputType.Type3, 5, 11, 2e-3, 1.5e-3)]
    public void Each_input_type_is_off_on_and_undefined_in_its_regions(InputType type, double offV, double onV, double onA, double transitionA)
    {
        var regions = InputRegions.Of(type);
        Assert.Equal(InputReading.Off, regions.Read(offV - Hair, 1));
        Assert.Equal(InputReading.Off, regions.Read(30, transitionA - Hair));
        Assert.Equal(InputReading.Undefined, regions.Read(offV + Hair, transitionA + Hair));
        Assert.Equal(InputReading.Undefined, regions.Read(onV - Hair, 1));
        Assert.Equal(InputReading.Undefined, regions.Read(30, onA - Hair));
        Assert.Equal(InputReading.On, regions.Read(onV + Hair, onA + Hair));
    }

    /// <summary>
    /// Source: the same table; derived: a curve whose voltage at the on minimum carries less than the on minimum current,
    /// or that is on at the off maximum, would be no input of its type. 30 V and 15 mA (30 mA for type 2) are the outer
    /// limits, from memory.
    /// </summary>
    [Theory]
    [InlineData(InputType.Type1, 15e-3)]
    [InlineData(InputType.Type2, 30e-3)]
    [InlineData(InputType.Type3, 15e-3)]
    public void The_assumed_curve_of_each_type_keeps_to_its_regions(InputType type, double mostA)
    {
        var regions = InputRegions.Of(type);
        PiecewiseCurve curve = InputCurves.Of(type);
        for (double volts = 0; volts <= 30; volts += 0.01)
        {
            InputReading reading = regions.Read(volts, curve.CurrentA(volts));
            if (volts < regions.OffMaximumV)
                Assert.Equal(InputReading.Off, reading);
            if (volts > regions.OnMinimumV + 0.005)
                Assert.Equal(InputReading.On, reading);
            Assert.InRange(curve.CurrentA(volts), 0, mostA);
        }
    }

    /// <summary>Source: NAMUR NE 43: valid 3.8 to 20.5 mA, failure at 3.6 mA or less and at 21 mA or more.</summary>
    [Theory]
    [InlineData(0, Ne43Reading.FailureLow)]
    [InlineData(3.6e-3, Ne43Reading.FailureLow)]
    [InlineData(3.601e-3, Ne43Reading.UnderRange)]
    [InlineData(3.799e-3, Ne43Reading.UnderRange)]
    [InlineData(3.8e-3, Ne43Reading.Valid)]
    [InlineData(20.5e-3, Ne43Reading.Valid)]
    [InlineData(20.501e-3, Ne43Reading.OverRange)]
    [InlineData(20.999e-3, Ne43Reading.OverRange)]
    [InlineData(21e-3, Ne43Reading.FailureHigh)]
    public void A_loop_current_is_valid_or_a_failure_by_NE_43(double currentA, Ne43Reading reading) =>
        Assert.Equal(reading, Ne43.Read(currentA));

    /// <summary>Source: NAMUR NE 43, as above: what a transmitter reports as a failure must lie where a failure is read.</summary>
    [Theory]
    [InlineData(LoopFault.DrivesLow, Ne43Reading.FailureLow)]
    [InlineData(LoopFault.DrivesHigh, Ne43Reading.FailureHigh)]
    [InlineData(LoopFault.WireBroken, Ne43Reading.FailureLow)]
    [InlineData(LoopFault.Shorted, Ne43Reading.FailureHigh)]
    public void A_failed_loop_is_told_from_a_valid_value_by_NE_43(LoopFault fault, Ne43Reading reading)
    {
        var loop = new CurrentLoop(new CurrentLoopDescription { LowValue = 0, HighValue = 1 });
        Assert.Equal(Ne43Reading.Valid, Ne43.Read(loop.CurrentA(2)));
        loop.Fault = fault;
        Assert.Equal(reading, Ne43.Read(loop.CurrentA(0.5)));
    }
}
