using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Files.Quantities;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Drawing;

public sealed class DrawTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 2 h\nsteps:\n";
    private const string Wear = "  - {name: wear, at: {from: 10 min, to: 50 min}, fault: pump-worn, magnitude: {from: 10 %, to: 60 %}}\n";
    private const string Block = "  - {name: block, at: 5 min, fault: outlet-blocked, part: any}\n";
    private const string Unnamed = "  - {at: 6 min, fault: line-leak, magnitude: {from: 1 cm3/min, to: 100 cm3/min, spread: log}}\n";

    [Fact]
    public void One_seed_draws_the_same_and_another_draws_otherwise()
    {
        BenchScript script = Read(Wear + Block + Unnamed);

        Assert.Equal(Texts(script with { Seed = 5 }), Texts(script with { Seed = 5 }));
        Assert.Equal(50, Enumerable.Range(0, 50).Select(seed => Texts(script with { Seed = (ulong)seed })[0]).Distinct().Count());
    }

    [Fact]
    public void Drawing_again_changes_nothing()
    {
        BenchScript drawn = Read(Wear + Block + Unnamed).Drawn();

        Assert.All(drawn.Steps.Zip(drawn.Drawn().Steps), pair => Assert.Same(pair.First, pair.Second));
        Assert.All(drawn.Steps, step => Assert.True(step.Drawn.Length > 0 && step.Time is AtTime && step.Action is SetFault { Draw: null, AnyPart: false }));
    }

    [Fact]
    public void A_step_more_changes_no_draw_of_a_named_one()
    {
        string[] alone = Texts(Read(Wear + Block));
        string[] behind = Texts(Read("  - {at: 1 s, mark: first}\n" + Unnamed + Wear + "  - {at: 2 s, fault: pump-worn, magnitude: {from: 1 %, to: 2 %}}\n" + Block));

        Assert.Equal(alone, (string[])[behind[2], behind[4]]);
    }

    [Fact]
    public void Two_fields_of_a_step_fill_their_ranges_and_are_drawn_apart()
    {
        BenchScript script = Read(Wear);
        var fractions = new List<double>();
        double together = 0;
        for (ulong seed = 0; seed < 200; seed++)
        {
            IReadOnlyList<Step> steps = (script with { Seed = seed }).Drawn().Steps;
            double time = (((AtTime)steps[0].Time).TimeUs - 600e6) / 2400e6;
            double wear = (((SetFault)steps[0].Action).MagnitudeSi!.Value - 0.1) / 0.5;
            fractions.AddRange([time, wear]);
            together += (time - 0.5) * (wear - 0.5);
        }

        Assert.InRange(fractions.Min(), 0, 0.05);
        Assert.InRange(fractions.Max(), 0.95, 1);
        Assert.InRange(fractions.Average(), 0.45, 0.55);
        // Covariance of two independent uniform draws is 0 with a standard deviation of 1/12/sqrt(200) = 0.006.
        Assert.InRange(together / 200, -0.025, 0.025);
    }

    [Fact]
    public void Every_part_is_drawn_in_its_turn()
    {
        BenchScript script = Read(Block);
        string[] parts = [.. Enumerable.Range(0, 200).Select(seed => ((SetFault)(script with { Seed = (ulong)seed }).Drawn().Steps[0].Action).Part)];

        Assert.Equal(["front-left", "gland"], parts.Distinct().Order(StringComparer.Ordinal));
        Assert.InRange(parts.Count(part => part == "gland"), 70, 130);
    }

    [Fact]
    public void Ratios_are_spread_evenly_where_asked()
    {
        BenchScript script = Read(Unnamed);
        int belowTen = Enumerable.Range(0, 400).Count(seed => ((SetFault)(script with { Seed = (ulong)seed }).Drawn().Steps[0].Action).MagnitudeSi < 10e-6 / 60);

        // Half of them below the geometric mean of 1 and 100.
        Assert.InRange(belowTen, 160, 240);
    }

    [Fact]
    public void A_draw_lies_in_its_range_and_has_six_digits() => Gen.Select(Gen.Double[-1e4, 1e4], Gen.Double[1e-3, 1e4], Gen.Double[0, 1], Gen.Bool).Sample((from, length, fraction, log) =>
    {
        double low = log ? Math.Abs(from) + 1e-3 : from;
        var range = new DrawRange(low, low + length, log ? DrawSpread.Log : DrawSpread.Even, "bar", UnitFamily.Pressure);
        double value = range.At(fraction);
        Assert.InRange(value, low, low + length);
        Assert.True(value == low || value == low + length || value == double.Parse(value.ToString("E5", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(range.At(0), low, Math.Abs(low) * 1e-5);
        Assert.Equal(range.At(1), low + length, Math.Abs(low + length) * 1e-5);
    });

    [Fact]
    public void What_was_drawn_is_told_in_the_usual_unit()
    {
        Step step = (Read(Wear) with { Seed = 3 }).Drawn().Steps[0];

        Assert.Matches(@"^at \d+ min [0-9.]+ s \(from 10 min to 50 min\); magnitude [0-9.]+ % \(from 10 % to 60 %\)$", step.Drawn);
        Assert.Contains(step.Action.Text.Split(", ")[1], step.Drawn, StringComparison.Ordinal);
        Assert.Equal("fault pump-worn, 10 % to 60 %", Read(Wear).Steps[0].Action.Text);
        Assert.Equal("fault outlet-blocked of any part", Read(Block).Steps[0].Action.Text);
    }

    private static string[] Texts(BenchScript script) => [.. script.Drawn().Steps.Select(step => $"{step.Time} {step.Action.Text} {step.Drawn}")];

    private static BenchScript Read(string steps)
    {
        using var folder = new TempFolder();
        return Reads.Script(folder.Write("s.yaml", Head + steps));
    }
}
