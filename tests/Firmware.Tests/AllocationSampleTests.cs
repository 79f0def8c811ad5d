using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using LubeController.Firmware.Tests.Scan;
using Xunit;

namespace LubeController.Firmware.Tests;

/// <summary>The allocation rule, seen to follow every kind of call and to refuse every kind of allocation.</summary>
public sealed class AllocationSampleTests
{
    private const string Place = "LubeController.Firmware.Tests.Samples.AllocationSample/";

    private static readonly AllocationRule Rule = new(new CallGraph([FirmwareModules.Samples]));

    [Theory]
    [InlineData("Direct", "new System.Object, reached by Direct.Scan")]
    [InlineData("ThroughHelper", "new System.Object, reached by ThroughHelper.Scan > ThroughHelper.First > ThroughHelper.Second")]
    [InlineData("Overridden", "new System.Object, reached by Overridden.Scan > Overrides.Ask")]
    [InlineData("ThroughInterface", "new System.Object, reached by ThroughInterface.Scan > Implements.Ask")]
    [InlineData("ThroughInheritedImplementation", "new System.Object, reached by ThroughInheritedImplementation.Scan > Inherited.Ask")]
    [InlineData("ThroughExplicitImplementation", "new System.Object, reached by ThroughExplicitImplementation.Scan > ImplementsExplicitly.LubeController.Firmware.Tests.Samples.AllocationSample.IAsked3.Ask")]
    [InlineData("Boxing", "boxing of System.Int32, reached by Boxing.Scan")]
    [InlineData("ArrayMade", "new array of System.Int32, reached by ArrayMade.Scan")]
    [InlineData("ParamsMade", "new array of System.Int32, reached by ParamsMade.Scan")]
    [InlineData("Concatenation", "a call out of the firmware, System.String.Concat, reached by Concatenation.Scan")]
    [InlineData("Literal", "a string literal, which becomes an object on the interpreter, reached by Literal.Scan")]
    [InlineData("DelegateMadeElsewhere", "new array of System.Int32, reached by DelegateMadeElsewhere.Scan > <>c.<.ctor>b__")]
    public void A_scan_that_allocates_is_refused_with_the_way_to_it(string sample, string found)
    {
        Finding finding = Assert.Single(Rule.Check(Place + sample, "Scan"));
        Assert.StartsWith(found, finding.Found);
    }

    [Fact]
    public void A_lambda_is_refused_for_its_closure_its_delegate_and_what_it_does()
    {
        List<string> found = Rule.Check(Place + "Lambda", "Scan").Select(finding => finding.Found).ToList();
        Assert.Collection(
            found,
            one => Assert.StartsWith("new LubeController.Firmware.Tests.Samples.AllocationSample/Lambda/<>c__DisplayClass", one),
            one => Assert.StartsWith("new LubeController.Firmware.Tests.Samples.AllocationSample/Maker, reached by Lambda.Scan", one),
            one => Assert.StartsWith("new array of System.Int32, reached by Lambda.Scan > <>c__DisplayClass", one));
    }

    [Theory]
    [InlineData("Enumeration", "System.Collections.ArrayList.GetEnumerator, reached by Enumeration.Scan")]
    [InlineData("EnumText", "System.Object.ToString, reached by EnumText.Scan")]
    public void A_call_that_leaves_the_firmware_is_refused(string sample, string found) =>
        Assert.Contains("a call out of the firmware, " + found, Rule.Check(Place + sample, "Scan").Select(finding => finding.Found));

    [Fact]
    public void An_exception_is_refused_where_it_is_made_and_where_it_is_thrown() => Assert.Equal(
        ["new System.InvalidOperationException, reached by Throws.Scan", "an exception thrown, reached by Throws.Scan"],
        Rule.Check(Place + "Throws", "Scan").Select(finding => finding.Found));

    [Fact]
    public void A_scan_that_allocates_nothing_is_left_alone()
    {
        Assert.Empty(Rule.Check(Place + "Good", "Scan"));
        Assert.Equal(
            ["Good.Scan", "Part.Advance", "Part.Ask", "Part.Recursive"],
            Rule.Reachable(Place + "Good", "Scan").Select(path => path.Method.DeclaringType.Name + "." + path.Method.Name));
    }

    [Theory]
    [InlineData("Missing", "Scan")]
    [InlineData("Good", "Missing")]
    public void A_root_that_is_not_there_is_an_error_and_not_a_pass(string sample, string method)
    {
        InvalidOperationException error = Assert.Throws<InvalidOperationException>(() => Rule.Check(Place + sample, method).ToList());
        Assert.Contains(Place + sample + "." + method, error.Message);
    }
}
