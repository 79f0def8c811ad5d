using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using ScottPlot;

namespace LubeController.Pictures;

/// <summary>A normal dose above, a blocked one below, on one scale: line pressure, and what is on underneath.</summary>
internal static class DosePicture
{
    private const int Width = 1000;
    private const int Height = 760;
    private const double BeforeS = 5;
    private const double WindowS = 80;

    private static readonly (string Signal, string Label, Color Colour)[] Lanes =
    [
        ("output.pump", "pump", Colors.SteelBlue),
        ("switch.s4-switch", "cycle switch", Colors.DarkOrange),
        ("alarm.divider-stalled", "divider-stalled", Colors.FireBrick),
        ("output.healthy-relay", "healthy relay", Colors.SeaGreen),
    ];

    /// <summary>Draws the second dose and the last one of a run.</summary>
    public static void Draw(Trace trace, string path)
    {
        double[] starts = Starts(trace.Find("output.pump")!).ToArray();
        var pictures = new Multiplot();
        pictures.AddPlots(2);
        DrawDose(pictures.GetPlot(0), trace, starts[1], "A normal dose: three pulses, then the pump stops");
        DrawDose(pictures.GetPlot(1), trace, starts[^1], "An outlet is blocked: the pistons stop, pressure climbs to the relief valve, the alarm comes at its bound");
        pictures.SavePng(path, Width, Height);
    }

    private static IEnumerable<double> Starts(Signal pump)
    {
        for (int point = 0; point < pump.Count; point++)
        {
            if (pump.Value(point) == 1)
                yield return pump.TimeUs(point) / 1e6;
        }
    }

    private static void DrawDose(Plot plot, Trace trace, double startS, string title)
    {
        double[] seconds = Generate.Range(-BeforeS, WindowS, 0.05);
        Signal pressure = trace.Find("pressure.line")!;
        var line = plot.Add.Scatter(seconds, seconds.Select(second => pressure.ValueAt((long)((startS + second) * 1e6)) / 1e5).ToArray());
        line.MarkerSize = 0;
        line.LineWidth = 2;
        line.Color = Colors.Black;
        line.LegendText = "line pressure, bar";
        for (int lane = 0; lane < Lanes.Length; lane++)
            DrawLane(plot, trace.Find(Lanes[lane].Signal)!, startS, seconds, lane);
        plot.Title(title, 15);
        plot.XLabel("seconds since the pump started");
        plot.YLabel("bar");
        plot.Axes.SetLimits(-BeforeS, WindowS, -110, 220);
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual([0, 50, 100, 150, 200], ["0", "50", "100", "150", "200"]);
        plot.ShowLegend(Alignment.MiddleRight);
    }

    private static void DrawLane(Plot plot, Signal signal, double startS, double[] seconds, int lane)
    {
        double floor = -30.0 - (24 * lane);
        var line = plot.Add.Scatter(seconds, seconds.Select(second => floor + (16 * signal.ValueAt((long)((startS + second) * 1e6)))).ToArray());
        line.MarkerSize = 0;
        line.LineWidth = 2;
        line.Color = Lanes[lane].Colour;
        line.LegendText = Lanes[lane].Label;
    }
}
