using System;
using System.Collections.Generic;
using ScottPlot;

namespace LubeController.Plots;

/// <summary>A polygonal line that leaves out the points it passes anyway.</summary>
/// <param name="within">How far, in y, the line may pass by a point that was left out.</param>
internal sealed class SparseLine(double within)
{
    private readonly List<Coordinates> _kept = [];
    private Coordinates _last;
    private double _leastSlope;
    private double _mostSlope;

    /// <summary>Adds a point; x never decreases. One at the x of the last one is a jump, and both of its ends are kept.</summary>
    public void Add(Coordinates point)
    {
        if (_kept.Count > 0 && !Passes(point))
            Keep(_last);
        if (_kept.Count == 0)
            Keep(point);
        else
            Narrow(point);
        _last = point;
    }

    /// <summary>The line, with the last point added.</summary>
    public List<Coordinates> Finish()
    {
        if (_kept[^1] != _last)
            _kept.Add(_last);
        return _kept;
    }

    /// <summary>Whether a straight line from the last point kept to this one passes all points between.</summary>
    private bool Passes(Coordinates point)
    {
        if (point.X <= _last.X)
            return point == _last;
        double slope = Slope(point, 0);
        return slope >= _leastSlope && slope <= _mostSlope;
    }

    private void Keep(Coordinates point)
    {
        if (_kept.Count == 0 || _kept[^1] != point)
            _kept.Add(point);
        (_leastSlope, _mostSlope) = (double.NegativeInfinity, double.PositiveInfinity);
    }

    /// <summary>From here on the line must pass this point too.</summary>
    private void Narrow(Coordinates point)
    {
        if (point.X <= _kept[^1].X)
        {
            Keep(point);
            return;
        }

        _leastSlope = Math.Max(_leastSlope, Slope(point, -within));
        _mostSlope = Math.Min(_mostSlope, Slope(point, within));
    }

    private double Slope(Coordinates point, double aside) => (point.Y + aside - _kept[^1].Y) / (point.X - _kept[^1].X);
}
