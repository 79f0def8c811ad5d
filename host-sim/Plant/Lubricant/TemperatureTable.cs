using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Lubricant;

/// <summary>A property over temperature from 200 to 500 K, in pieces of 0.25 K; or one value, where it does not change.</summary>
internal sealed class TemperatureTable
{
    internal const double LowestK = 200;
    internal const double HighestK = 500;

    private const int Pieces = 1200;

    private readonly HermiteTable? _table;
    private readonly double _constant;

    private TemperatureTable(HermiteTable? table, double constant)
    {
        _table = table;
        _constant = constant;
    }

    /// <summary>The same at every temperature.</summary>
    internal static TemperatureTable Constant(double value) => new(null, value);

    /// <summary>A function and its derivative.</summary>
    internal static TemperatureTable Of(Func<double, double> value, Func<double, double> slope) =>
        new(new HermiteTable(LowestK, HighestK, Pieces, value, slope), double.NaN);

    /// <summary>value·exp(-coefficient·(T - reference)).</summary>
    internal static TemperatureTable Exponential(double value, double coefficientPerK, double referenceK)
    {
        if (coefficientPerK == 0 || value == 0)
            return Constant(value);
        double At(double temperatureK) => value * Math.Exp(-coefficientPerK * (temperatureK - referenceK));
        return Of(At, temperatureK => -coefficientPerK * At(temperatureK));
    }

    internal double At(double temperatureK) => _table == null ? _constant : _table.At(temperatureK);
}
