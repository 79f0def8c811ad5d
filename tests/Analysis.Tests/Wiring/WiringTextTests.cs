using System;
using System.Linq;
using LubeController.Analysis.Wiring;
using LubeController.Plant.Contacts;
using LubeController.Plant.Wiring;
using Xunit;

namespace LubeController.Analysis.Tests.Wiring;

/// <summary>The matrix as a terminal shows it, and sound wiring that is itself wrong.</summary>
public sealed class WiringTextTests
{
    private static readonly SupervisoryWiringDescription Plain = new()
    {
        Supplies = [new("G1", "24V", "0V", 24, 0.2)],
        Wires = [new("W1", "X1", "A1"), new("W2", "X2", "A2")],
        Contacts =
        [
            new("K1", "healthy-relay", ContactSide.NormallyOpen, "24V", "X1"),
            new("K2", "warning", ContactSide.NormallyOpen, "24V", "X2"),
        ],
        Inputs = [new() { Name = "healthy", From = "A1", To = "0V" }, new() { Name = "warning", From = "A2", To = "0V" }],
    };

    private static readonly SupervisoryWiringDescription WithHeartbeat = Plain with
    {
        Wires = [.. Plain.Wires, new("W3", "X3", "A3")],
        Contacts = [.. Plain.Contacts, new("K4", "heartbeat", ContactSide.NormallyOpen, "24V", "X3")],
        Inputs = [.. Plain.Inputs, new() { Name = "heartbeat", From = "A3", To = "0V" }],
    };

    [Fact]
    public void What_is_lost_of_any_alarm_comes_before_every_detail()
    {
        string[] lines = Lines(Plain);
        int last = Array.FindLastIndex(lines, line => line.Contains("lost, nobody can detect it", StringComparison.Ordinal));
        int firstDetail = Array.FindIndex(lines, line => line.Contains("sound wiring: ", StringComparison.Ordinal));
        Assert.Equal("What nobody can detect:", lines[2]);
        Assert.True(last > 2 && last < firstDetail, $"the last loss stands in line {last}, the first detail in line {firstDetail}");
        // The relay and the warning each lose something of their own.
        Assert.Contains(lines[..firstDetail], line => line.Contains("contact-welded K1", StringComparison.Ordinal));
        Assert.Contains(lines[..firstDetail], line => line.Contains("wire-open W2", StringComparison.Ordinal));
    }

    [Fact]
    public void A_heartbeat_is_advised_as_one_where_there_is_none_and_through_the_contact_where_there_is_one()
    {
        Assert.Contains(Lines(Plain), line => line.EndsWith("or heartbeat", StringComparison.Ordinal));
        string[] lines = Lines(WithHeartbeat);
        Assert.DoesNotContain(lines, line => line.EndsWith("heartbeat", StringComparison.Ordinal) && line.Contains("seen with", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.EndsWith("or heartbeat through this contact", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dead_short_is_told_by_the_supply_that_it_pulls_down()
    {
        WiringMatrix matrix = WiringMatrix.Of(Plain with { Wires = [.. Plain.Wires, new("W9", "24V", "0V")] }, WiringCondition.All);
        Assert.Equal(["supply G1 gives 17.1 V of 24 V in health: something shorts or overloads it"], matrix.Wrongs.Where(wrong => wrong.Contains("in health", StringComparison.Ordinal)));
        Assert.Contains(WiringText.Of("x", matrix), line => line == "the wiring itself is wrong: " + matrix.Wrongs[0]);
        Assert.DoesNotContain(WiringText.Of("x", matrix), line => line.Contains("wire a contact", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_supplies_against_each_other_are_told_by_name()
    {
        WiringMatrix matrix = WiringMatrix.Of(Plain with { Supplies = [.. Plain.Supplies, new("G2", "0V", "24V", 24, 0.2)] }, WiringCondition.All);
        Assert.Contains(matrix.Wrongs, wrong => wrong.StartsWith("supply G1 gives 0 V of 24 V", StringComparison.Ordinal));
        Assert.Contains(matrix.Wrongs, wrong => wrong.StartsWith("supply G2 gives 0 V of 24 V", StringComparison.Ordinal));
    }

    [Fact]
    public void A_relay_that_cuts_its_own_supply_is_told_by_name()
    {
        WiringMatrix matrix = WiringMatrix.Of(
            Plain with
            {
                Coils = [new("K10", "C1", "0V", 1000, 16, 3)],
                CoilContacts = [new("K10-12", "K10", ContactSide.NormallyClosed, "X1", "C1")],
            },
            WiringCondition.All);
        Assert.Equal(["relay K10 interrupts its own supply in health and buzzes"], matrix.Wrongs);
    }

    [Fact]
    public void Sound_wiring_has_nothing_wrong() => Assert.Empty(WiringMatrix.Of(WithHeartbeat, WiringCondition.All).Wrongs);

    [Fact]
    public void Assumed_input_curves_are_told_in_text_and_page()
    {
        Assert.Contains(WiringText.Assumed, Lines(Plain));
        using var writer = new System.IO.StringWriter();
        WiringHtml.Write("x", WiringMatrix.Of(Plain, WiringCondition.All), writer);
        Assert.Contains(System.Net.WebUtility.HtmlEncode(WiringText.Assumed), writer.ToString(), StringComparison.Ordinal);
    }

    private static string[] Lines(SupervisoryWiringDescription wiring) => [.. WiringText.Of("x", WiringMatrix.Of(wiring, WiringCondition.All))];
}
