using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LubeController.Plant.Circuits;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>Writes a netlist, element by element.</summary>
internal sealed class Deck
{
    private readonly StringBuilder _text = new("* deck\n");
    private int _count;

    internal void Resistor(string a, string b, double ohms) => Line($"R{++_count} {a} {b} {Show(ohms)}");

    internal string VoltageSource(string plus, string minus, double volts, double ohms)
    {
        int index = ++_count;
        string inner = ohms > 0 ? $"s{index}" : plus;
        Line($"V{index} {inner} {minus} dc {Show(volts)}");
        if (ohms > 0)
            Line($"R{index}s {inner} {plus} {Show(ohms)}");
        return $"v{index}#branch";
    }

    internal void CurrentSource(string from, string to, double amps) => Line($"I{++_count} {from} {to} dc {Show(amps)}");

    /// <summary>A source whose current is looked up over its voltage; the outermost pieces are drawn far out.</summary>
    internal void Curve(string a, string b, PiecewiseCurve curve)
    {
        const double Far = 1e4;
        List<CurvePoint> points = [new(-Far, curve.CurrentA(-Far)), .. curve.Points, new(Far, curve.CurrentA(Far))];
        string pairs = string.Join(", ", points.Select(point => $"{Show(point.VoltageV)}, {Show(point.CurrentA)}"));
        string across = b == "0" ? $"V({a})" : a == "0" ? $"-V({b})" : $"V({a},{b})";
        Line($"B{++_count} {a} {b} I=pwl({across}, {pairs})");
    }

    internal string Finish(string shuntOhms) => _text + OperatingPoint.Options(shuntOhms) + "\n.end\n";

    private static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private void Line(string text) => _text.Append(text).Append('\n');
}
