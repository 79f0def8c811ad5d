using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Plant.Wiring;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>Source: ngspice, a general circuit simulator (Debian package ngspice), given the same description.</summary>
[Trait("Run", "Long")]
public sealed class WiringAgreementTests
{
    [Fact]
    public void Terminal_voltages_agree_with_ngspice_within_a_thousandth_for_every_single_wire_fault()
    {
        (int cases, int compared, int buzzing) = Compare([.. WiringSamples.All.SelectMany(wiring => Cases(wiring, "good"))]);
        Assert.True(cases > 400 && compared > 10 * cases && buzzing > 0, $"{cases} cases, {compared} voltages, {buzzing} buzz");
    }

    /// <summary>Both simulators are given what stands in the plant file.</summary>
    [Fact]
    public void So_do_those_of_every_wired_plant_that_ships()
    {
        string[] files = Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "wiring"), "*.plant.yaml");
        (int cases, int compared, int _) = Compare([.. files.SelectMany(file => Cases(Repository.ReadPlant(file).Wiring!, "healthy-relay"))]);
        Assert.True(files.Length >= 4 && cases > 400 && compared > 5 * cases, $"{files.Length} files, {cases} cases, {compared} voltages");
    }

    private static (int Cases, int Compared, int Buzzing) Compare(WiringCase[] cases)
    {
        Assert.SkipUnless(ExternalTool.NgSpice.IsInstalled, ExternalTool.NgSpice.Reason);
        WiringDeck[] decks = [.. cases.Select(facts => new WiringDeck(facts))];
        Dictionary<string, double>[] answers = Settle(decks, out HashSet<int> buzzing);

        int compared = 0;
        for (int index = 0; index < cases.Length; index++)
        {
            SupervisoryWiring wiring = cases[index].Build();
            Assert.True(buzzing.Contains(index) == wiring.Buzzing is not null, $"{cases[index]}: {wiring.Buzzing ?? "nothing"} buzzes here");
            if (wiring.Buzzing is null)
                compared += Compare(cases[index], wiring, decks[index], answers[index]);
        }

        return (cases.Length, compared, buzzing.Count);
    }

    private static int Compare(WiringCase facts, SupervisoryWiring wiring, WiringDeck deck, Dictionary<string, double> answer)
    {
        int compared = 0;
        foreach (string terminal in deck.Nodes.Keys)
        {
            double here = wiring.TerminalV(terminal);
            double there = deck.At(terminal, answer);
            if (double.IsNaN(here))
                continue;
            compared++;
            Assert.True(Math.Abs(here - there) <= 1e-3 * Math.Max(Math.Abs(there), 1), $"{facts}: terminal {terminal} {here} V, ngspice {there} V");
        }

        return compared;
    }

    private static Dictionary<string, double>[] Settle(WiringDeck[] decks, out HashSet<int> buzzing)
    {
        var answers = new Dictionary<string, double>[decks.Length];
        int[] open = [.. Enumerable.Range(0, decks.Length)];
        for (int round = 0; open.Length > 0 && round < 12; round++)
        {
            Dictionary<string, double>[] found = [.. OperatingPoint.Of([.. open.Select(index => decks[index].Write())])];
            for (int k = 0; k < open.Length; k++)
            {
                // Where its search does not converge it is started anew from less strict floating nodes; it must end somewhere.
                if (found[k].Count == 0)
                    found[k] = OperatingPoint.Of([decks[open[k]].Write("1e8")])[0];
                Assert.NotEmpty(found[k]);
                answers[open[k]] = found[k];
            }

            open = [.. open.Where(index => decks[index].Step(answers[index]))];
        }

        buzzing = [.. open];
        return answers;
    }

    // Health, the warning alone, a failure, everything at once.
    private static IEnumerable<WiringCase> Cases(SupervisoryWiringDescription wiring, string health)
    {
        string[][] states = [[health], [health, "warning", "lamp"], ["lamp"], []];
        foreach (string[] energised in states)
        {
            yield return new(wiring, energised, WireFault.None, 0, 0, 0);
            for (int wire = 0; wire < wiring.Wires.Count; wire++)
            {
                yield return new(wiring, energised, WireFault.Open, wire, 0, 0);
                yield return new(wiring, energised, WireFault.Resistive, wire, 0, 4700);
                yield return new(wiring, energised, WireFault.ToSupply, wire, 0, 0.1);
                yield return new(wiring, energised, WireFault.ToGround, wire, 0, 0.1);
                for (int other = 0; other < wiring.Wires.Count; other++)
                {
                    if (other != wire)
                        yield return new(wiring, energised, WireFault.Bridged, wire, other, 0.1);
                }
            }
        }
    }
}
