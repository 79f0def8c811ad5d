using System;
using System.IO;
using System.Text;
using System.Text.RegularExpressions;
using ScottPlot;
using SkiaSharp;

namespace LubeController.Plots;

/// <summary>Writes plots as one SVG; the library itself does so for a single plot only.</summary>
internal static class Svg
{
    /// <summary>Writes the same bytes for the same plots, one below the other.</summary>
    public static void Save(Multiplot plots, string path, int width, int height)
    {
        using var bytes = new MemoryStream();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, width, height), bytes))
        {
            int count = plots.Count();
            for (int plot = 0; plot < count; plot++)
                plots.GetPlot(plot).Render(canvas, new PixelRect(0, width, (plot + 1) * height / count, plot * height / count));
        }

        File.WriteAllText(path, Mended(Encoding.UTF8.GetString(bytes.ToArray()), width, height));
    }

    /// <summary>
    /// Lets the picture shrink with its page, gives a reader without the font one as wide, and takes out the comma and the
    /// white space that the library leaves after places and around texts, which the grammar of SVG does not allow or count.
    /// </summary>
    private static string Mended(string svg, int width, int height)
    {
        string size = FormattableString.Invariant($"width=\"{width}\" height=\"{height}\"");
        svg = svg.Replace(size + ">", FormattableString.Invariant($"{size} viewBox=\"0 0 {width} {height}\">"), StringComparison.Ordinal);
        svg = svg.Replace($"font-family=\"{PanelPlot.Font}\"", $"font-family=\"{PanelPlot.Font}, Verdana, sans-serif\"", StringComparison.Ordinal);
        svg = svg.Replace(", \"", "\"", StringComparison.Ordinal);
        return Regex.Replace(svg, @"(<text[^>]*>)\s*([^<]*?)\s*</text>", "$1$2</text>", RegexOptions.CultureInvariant);
    }
}
