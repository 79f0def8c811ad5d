using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>Source: ngspice, a general circuit simulator (Debian package ngspice), given the same elements.</summary>
[Trait("Run", "Long")]
public sealed class RandomAgreementTests
{
    private const int Circuits = 400;

    [Fact]
    public void Node_voltages_of_random_circuits_agree_with_ngspice_within_a_thousandth()
    {
        Assert.SkipUnless(ExternalTool.NgSpice.IsInstalled, ExternalTool.NgSpice.Reason);
        RandomCircuit[] drawn = [.. Enumerable.Range(1, Circuits).Select(seed => new RandomCircuit((ulong)seed))];
        IReadOnlyList<Dictionary<string, double>> answers = OperatingPoint.Of([.. drawn.Select(circuit => circuit.Netlist)]);

        int compared = 0;
        int floating = 0;
        int solved = 0;
        for (int index = 0; index < drawn.Length; index++)
        {
            drawn[index].Circuit.Solve();
            // Newton's method, which ngspice uses, goes round in circles on some curves with sharp corners.
            if (answers[index].Count == 0)
                continue;
            solved++;
            for (int node = 1; node < drawn[index].Circuit.NodeCount; node++)
            {
                double here = drawn[index].Circuit.VoltageV(node);
                if (double.IsNaN(here))
                {
                    floating++;
                    continue;
                }

                compared++;
                double there = answers[index][RandomCircuit.Name(node)];
                Assert.True(Math.Abs(here - there) <= 1e-3 * Math.Max(Math.Abs(there), 1), $"seed {index + 1}, node {node}: {here} V, ngspice {there} V\n{drawn[index].Netlist}");
            }
        }

        Assert.True(solved >= 200 && compared > 5 * solved && floating > 0, $"{solved} circuits, {compared} voltages compared, {floating} floating");
    }
}
