using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using LubeController.Plant.Description;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Pump;

namespace LubeController.Handbook.Tests.Hydraulics.Spice;

/// <summary>
/// A plant's pump, line and relief valve as a circuit: pressure in bar is voltage, flow in cm3/s is current. Volumes are
/// capacitors, tubes resistors, the pump a source of current, the valve a switch with hysteresis and a resistor behind the
/// voltage at which it reseats. Read from the description alone, by formulas of its own.
/// </summary>
internal sealed class LineDeck
{
    private const double Bar = 1e5;

    private const double Cm3 = 1e-6;

    private readonly StringBuilder _text = new();
    private readonly List<double> _cm3PerBar = [0];
    private readonly PlantDescription _plant;

    internal LineDeck(PlantDescription plant)
    {
        _plant = plant;
        Line();
        Relief();
    }

    /// <summary>The node at the end of the line.</summary>
    internal string End => $"p{_cm3PerBar.Count - 1}";

    /// <summary>A constant-flow pump that runs from the start until a time, s.</summary>
    internal LineDeck ConstantFlowUntil(double offS)
    {
        double flow = ((ConstantFlowPumpDescription)_plant.Pump).FlowM3PerS / Cm3;
        return Source([(0, flow), (offS, flow), (offS + 1e-6, 0)]);
    }

    /// <summary>
    /// A cam pump from the start of its delivery until a time: piston area times speed of the piston on a sine-shaped cam,
    /// each piece of the description taken at its mean.
    /// </summary>
    internal LineDeck CamUntil(double offS)
    {
        var cam = (CamPumpDescription)_plant.Pump;
        double displacement = Math.PI / 4 * cam.PistonBoreM * cam.PistonBoreM * cam.StrokeM * cam.VolumetricEfficiency / Cm3;
        double piece = 0.5 / cam.SpeedRevPerS / cam.DeliverySegments;
        var points = new List<(double, double)>();
        for (int turn = 0; turn / cam.SpeedRevPerS < offS; turn++)
        {
            for (int k = 0; k <= cam.DeliverySegments; k++)
            {
                double from = (turn / cam.SpeedRevPerS) + (k * piece);
                bool filling = k == cam.DeliverySegments;
                double to = filling ? (turn + 1) / cam.SpeedRevPerS : from + piece;
                double lift = filling ? 0 : 0.5 * (Math.Cos(Math.PI * k / cam.DeliverySegments) - Math.Cos(Math.PI * (k + 1) / cam.DeliverySegments));
                points.Add((from + 1e-6, displacement * lift / piece));
                points.Add((to, displacement * lift / piece));
            }
        }

        return Source(points);
    }

    /// <summary>A way out at the end of the line, stated by its flow at 100 bar, m3/s.</summary>
    internal LineDeck LeakAtEnd(double flowAt100BarM3PerS) => Add($"Rleak {End} 0 {100 / (flowAt100BarM3PerS / Cm3):R}");

    internal string Finish()
    {
        double air = _plant.Line.AirM3 / Cm3;
        for (int node = 0; node < _cm3PerBar.Count; node++)
        {
            if (air > 0 && _cm3PerBar.Count > 1)
                throw new InvalidOperationException("Air is carried along a line of several nodes, for which no circuit element stands.");
            string stores = Text($"{_cm3PerBar[node]:R}*v(p{node})");
            if (air > 0)
                stores += Text($" + {air:R}*(1 - (1.01325/(1.01325 + max(v(p{node}),-1)))**{1 / _plant.Line.GasExponent:R})");
            Add(air > 0 ? $"C{node} p{node} 0 q='{stores}'" : Text($"C{node} p{node} 0 {_cm3PerBar[node]:R}"));
        }

        return _text.ToString();
    }

    private void Line()
    {
        double perBar = Bar / _plant.Line.BulkModulusPa;
        _cm3PerBar[0] += _plant.Line.VolumeM3 / Cm3 * perBar;
        int resistor = 0;
        foreach (LineSegmentDescription segment in _plant.Line.Segments)
        {
            double length = segment.LengthM / segment.Cells;
            double half = Math.PI / 4 * segment.BoreM * segment.BoreM * length / Cm3 / 2 * (perBar + (Bar / segment.WallModulusPa));
            double ohms = 128 * ViscosityPaS(_plant.TemperatureK) * length / (Math.PI * Math.Pow(segment.BoreM, 4)) * Cm3 / Bar;
            for (int cell = 0; cell < segment.Cells; cell++)
            {
                _cm3PerBar[^1] += half;
                _cm3PerBar.Add(half);
                double strainer = resistor == 0 ? Strainer() : 0;
                Add(Text($"R{resistor} p{_cm3PerBar.Count - 2} p{_cm3PerBar.Count - 1} {ohms + strainer:R}"));
                resistor++;
            }
        }
    }

    // The strainer stands in the line's beginning; its loss is stated for oil at 40 degC.
    private double Strainer() => _plant.Line.StrainerLossPa == 0
        ? 0
        : _plant.Line.StrainerLossPa / Bar / (_plant.Line.StrainerFlowM3PerS / Cm3) * ViscosityPaS(_plant.TemperatureK) / ViscosityPaS(313.15);

    /// <summary>ASTM D341: log log (nu + 0.7) = A - B log T, nu in mm2/s and T in K, through the two viscosities of the description.</summary>
    private double ViscosityPaS(double temperatureK)
    {
        var oil = (OilDescription)_plant.Lubricant;
        double at40 = oil.Viscosity.At40M2PerS.Value;
        double density = oil.DensityKgPerM3.Value * (1 - (oil.ExpansionPerK.Value * (temperatureK - 288.15)));
        if (oil.Viscosity is { Slope.Value: 0 })
            return at40 * density;
        double slope = oil.Viscosity.Slope?.Value ?? ((LogLog(at40) - LogLog(oil.Viscosity.SecondM2PerS!.Value)) / Math.Log10(oil.Viscosity.SecondTemperatureK / 313.15));
        double loglog = LogLog(at40) - (slope * Math.Log10(temperatureK / 313.15));
        return (Math.Pow(10, Math.Pow(10, loglog)) - 0.7) * 1e-6 * density;
    }

    private static double LogLog(double viscosityM2PerS) => Math.Log10(Math.Log10((viscosityM2PerS * 1e6) + 0.7));

    private void Relief()
    {
        double open = _plant.Relief.OpeningPressurePa / Bar;
        double reseat = (_plant.Relief.ReseatPressurePa ?? _plant.Relief.OpeningPressurePa) / Bar;
        double ohms = (open + (_plant.Relief.OverridePa / Bar) - reseat) / (_plant.Relief.RatedFlowM3PerS / Cm3);

        // Pressure falls towards the reseat pressure for ever: it counts as there when a thousandth of the way is left.
        double shut = reseat + (1e-3 * (open - reseat));
        Add("Srelief p0 relief p0 0 valve");
        Add(Text($".model valve sw(vt={(open + shut) / 2:R} vh={(open - shut) / 2:R} ron=1e-6 roff=1e12)"));
        Add(Text($"Rrelief relief seat {ohms:R}"));
        Add(Text($"Vseat seat 0 {reseat:R}"));
    }

    private LineDeck Source(IEnumerable<(double AtS, double Flow)> points)
    {
        var text = new StringBuilder("Ipump 0 p0 pwl(");
        foreach ((double atS, double flow) in points)
            text.Append(CultureInfo.InvariantCulture, $"{atS:R} {flow:R}\n+ ");
        _text.Append(text.Append(")\n"));
        return this;
    }

    private LineDeck Add(FormattableString line) => Add(Text(line));

    private LineDeck Add(string line)
    {
        _text.Append(line).Append('\n');
        return this;
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
