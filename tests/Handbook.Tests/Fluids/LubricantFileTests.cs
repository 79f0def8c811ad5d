using System;
using System.Linq;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>The lubricant files held against the figures they were written from.</summary>
public sealed class LubricantFileTests
{
    /// <summary>Source: lithium grease at about 25 degC, from memory: tau_y, K, n; shown as assumed wherever a user sees them.</summary>
    [Theory]
    [InlineData("NLGI 00", 0, 1.85, 1)]
    [InlineData("NLGI 1", 189, 4.1, 0.797)]
    [InlineData("NLGI 2", 650, 20.6, 0.605)]
    public void Grease_files_hold_the_values_from_memory_and_call_them_assumed(string name, double yieldStress, double consistency, double index)
    {
        var grease = Assert.IsType<GreaseDescription>(LubricantFiles.Named(name));

        Assert.Equal((yieldStress, consistency, index), (grease.YieldStressPa.Value, grease.ConsistencyPaSn.Value, grease.FlowIndex.Value));
        AssertAllOfFlowIsAssumed(grease);
    }

    /// <summary>Derived: NLGI 0 lies halfway between 00 and 1 in penetration (ASTM D217: 415, 370, 325 in the middle), and in the file so do its values.</summary>
    [Fact]
    public void The_file_of_NLGI_0_is_the_mean_of_its_neighbours_and_called_assumed()
    {
        double[] middles = [.. new[] { "00", "0", "1" }.Select(number => NlgiGrade.Named(number)!).Select(grade => (grade.LeastPenetration + grade.MostPenetration) / 2)];
        Assert.Equal(middles[1], (middles[0] + middles[2]) / 2);
        var soft = (GreaseDescription)LubricantFiles.Named("NLGI 00");
        var own = (GreaseDescription)LubricantFiles.Named("NLGI 0");
        var firm = (GreaseDescription)LubricantFiles.Named("NLGI 1");

        Near.Relative((soft.YieldStressPa.Value + firm.YieldStressPa.Value) / 2, own.YieldStressPa.Value, 1e-12);
        Near.Relative((soft.ConsistencyPaSn.Value + firm.ConsistencyPaSn.Value) / 2, own.ConsistencyPaSn.Value, 1e-12);
        Near.Relative((soft.FlowIndex.Value + firm.FlowIndex.Value) / 2, own.FlowIndex.Value, 1e-12);
        AssertAllOfFlowIsAssumed(own);
    }

    /// <summary>Source: ISO 3448 for the viscosity at 40 degC; that at 100 degC is from memory and shown as assumed.</summary>
    [Theory]
    [InlineData(68)]
    [InlineData(150)]
    [InlineData(220)]
    [InlineData(320)]
    [InlineData(460)]
    public void Oil_files_hold_the_middle_of_their_grade_and_call_the_second_point_from_memory(double grade)
    {
        var oil = Assert.IsType<OilDescription>(LubricantFiles.Named(FormattableString.Invariant($"ISO VG {grade}")));

        Near.Relative(grade * 1e-6, oil.Viscosity.At40M2PerS.Value, 1e-12);
        Assert.Equal((grade, Confidence.Standard), (oil.IsoViscosityGrade, oil.Viscosity.At40M2PerS.Confidence));
        Assert.Contains(oil.Assumptions(), value => value.Name == "viscosity at 100 degC");
    }

    /// <summary>Source: derived with these greases: 10 cm3/min through 5 m of 6 mm bore at 25 degC. By file, table and inverse together.</summary>
    [Theory]
    [InlineData("NLGI 00", 0.485e5)]
    [InlineData("NLGI 1", 8.01e5)]
    [InlineData("NLGI 2", 26.99e5)]
    public void A_grease_read_from_its_file_needs_the_drop_derived_for_it(string name, double printedPa)
    {
        var grease = new LubricantProperties(LubricantFiles.Named(name), LubricantProperties.GreaseReferenceK);

        // The drop is printed to half a unit of its last figure, which the flow shows many times magnified.
        Assert.InRange(10e-6 / 60, grease.TubeFlowM3PerS(printedPa * 0.9985, 5, 3e-3), grease.TubeFlowM3PerS(printedPa * 1.0015, 5, 3e-3));
    }

    /// <summary>
    /// Common practice: the firmer the grease and the colder, the harder it is to pump. At the flows of lubrication, that is:
    /// fast, the figures from memory cross, since only NLGI 00 is not thinned by shear in them.
    /// </summary>
    [Fact]
    public void Firmer_and_colder_greases_are_harder_to_pump_as_common_practice_has_it()
    {
        double[] drops = [.. new[] { "NLGI 00", "NLGI 0", "NLGI 1", "NLGI 2" }.Select(name => DropFor10Cm3PerMin(name))];
        Assert.Equal(drops.Order(), drops);
        Assert.Equal(4, drops.Distinct().Count());
        Assert.All(LubricantFiles.All, lubricant =>
        {
            double last = 0;
            for (double temperature = 253.15; temperature < 353; temperature += 10)
            {
                double flow = Flow(lubricant.Name, temperature);
                Assert.True(flow > last || (flow == 0 && last == 0), $"{lubricant.Name} at {temperature}");
                last = flow;
            }

            Assert.True(last > 0);
        });
    }

    private static double DropFor10Cm3PerMin(string name)
    {
        var grease = new LubricantProperties(LubricantFiles.Named(name), 293.15);
        return PipeFlow.HerschelBulkleyDropPa(10e-6 / 60, 5, 3e-3, grease.YieldStressPa, grease.ConsistencyPaSn, grease.FlowIndex);
    }

    private static double Flow(string name, double temperatureK) =>
        new LubricantProperties(LubricantFiles.Named(name), temperatureK).TubeFlowM3PerS(50e5, 5, 3e-3);

    private static void AssertAllOfFlowIsAssumed(GreaseDescription grease)
    {
        string[] assumed = [.. grease.Assumptions().Select(value => value.Name)];
        Assert.Contains("yield stress at 25 degC", assumed);
        Assert.Contains("consistency at 25 degC", assumed);
        Assert.Contains("flow index", assumed);
        Assert.Contains("temperature coefficient of the yield stress", assumed);
    }
}
