using System.Globalization;
using System.Linq;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace LubeController.Plots;

/// <summary>Draws a panel: pressures over time, and below them what is on.</summary>
internal static class PanelPlot
{
    /// <summary>The font of all text.</summary>
    public const string Font = "DejaVu Sans";

    private const double BeforeS = 5;

    /// <summary>A tenth of a line's width on the finest of the scales.</summary>
    private const double WithinPa = 2000;

    /// <summary>Draws one panel on the scale of its picture.</summary>
    public static void Draw(Plot plot, Panel panel, Picture picture)
    {
        var scale = new LaneScale(picture.MostBar);
        AddPressure(plot, panel, "pressure.end", picture, "pressure at the divider", Colors.DarkGray);
        AddPressure(plot, panel, "pressure.line", picture, "pressure at the pump", Colors.Black);
        for (int lane = 0; lane < panel.Lanes.Count; lane++)
            AddLane(plot, panel, picture, lane, scale);
        plot.Title(panel.Title, 17);
        plot.XLabel("time since the pump started, s", 15);
        plot.Axes.Bottom.TickLabelStyle.FontSize = 14;
        plot.Axes.Left.TickLabelStyle.FontSize = 14;
        plot.Axes.Left.TickGenerator = Ticks(panel, scale);
        plot.Axes.SetLimits(-BeforeS, picture.WindowS, scale.FloorBar(panel.Lanes.Count - 1) - (0.25 * scale.PitchBar), picture.MostBar);
        plot.Legend.FontSize = 14;
        plot.Legend.Orientation = Orientation.Horizontal;
        plot.Legend.TightHorizontalWrapping = true;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Font.Set(Font);
        plot.ShowLegend(Alignment.UpperLeft);
    }

    private static void AddPressure(Plot plot, Panel panel, string signal, Picture picture, string label, Color colour)
    {
        Coordinates[] points = [.. Run.Of(panel.Dose).Around(signal, BeforeS, picture.WindowS, WithinPa).Select(point => new Coordinates(point.X, point.Y / 1e5))];
        var line = plot.Add.ScatterLine(points, colour);
        line.LineWidth = 1.5f;
        line.LegendText = label;
    }

    private static void AddLane(Plot plot, Panel panel, Picture picture, int number, LaneScale scale)
    {
        Lane lane = panel.Lanes[number];
        double floor = scale.FloorBar(number);
        Coordinates[] points = [.. Run.Of(lane.Of ?? panel.Dose).Around(lane.Signal, BeforeS, picture.WindowS, 0).Select(point => new Coordinates(point.X, floor + (point.Y * scale.HeightBar)))];
        var line = plot.Add.ScatterLine(points, lane.Colour);
        line.LineWidth = 2;
        line.FillY = true;
        line.FillYValue = floor;
        line.FillYColor = lane.Colour.WithAlpha(0.35);
    }

    /// <summary>Pressures above zero, names of lanes below.</summary>
    private static NumericManual Ticks(Panel panel, LaneScale scale)
    {
        var ticks = new NumericManual();
        for (double bar = 0; bar < scale.MostBar; bar += scale.StepBar)
            ticks.AddMajor(bar, bar.ToString("0' bar'", CultureInfo.InvariantCulture));
        for (int lane = 0; lane < panel.Lanes.Count; lane++)
            ticks.AddMajor(scale.FloorBar(lane) + (0.5 * scale.HeightBar), panel.Lanes[lane].Label);
        return ticks;
    }
}
