using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Plant.Fields;

namespace LubeController.Files.Quantities;

/// <summary>The units in which a user may write a measure, the usual one first.</summary>
public sealed class UnitFamily
{
    private static readonly Unit[] Volumes = [new("cm3", Per: 1e6), new("ml", 1e-3, 1e3), new("l", Per: 1e3), new("mm3", Per: 1e9), new("m3")];

    private static readonly Unit[] Times = [new("ms", 1e-3), new("s"), new("min", 60), new("h", 3600), new("d", 86_400), new("us", 1e-6)];

    private static readonly Unit Minute = Times[2];

    private readonly Dictionary<string, Unit> _units;

    private UnitFamily(Measure measure, params IReadOnlyList<Unit> units)
    {
        Measure = measure;
        Units = [.. units.Select(unit => unit.Symbol)];
        _units = units.ToDictionary(unit => unit.Symbol, StringComparer.Ordinal);
    }

    /// <summary>Gauge pressure or pressure difference.</summary>
    public static UnitFamily Pressure { get; } = new(Measure.Pressure, new("bar", 1e5), new("kPa", 1e3), new("MPa", 1e6), new("GPa", 1e9), new("Pa"), new("mbar", 1e2), new("psi", 6894.757293168361));

    /// <summary>Volume.</summary>
    public static UnitFamily Volume { get; } = new(Measure.Volume, Volumes);

    /// <summary>Volume flow.</summary>
    public static UnitFamily Flow { get; } = new(Measure.Flow, [.. Times.Where(time => time.Symbol is "min" or "s" or "h" or "d").OrderBy(time => time != Minute).SelectMany(time => Volumes.Select(volume => volume.For(time)))]);

    /// <summary>Duration.</summary>
    public static UnitFamily Time { get; } = new(Measure.Time, Times);

    /// <summary>Rotational speed or rate of strokes.</summary>
    public static UnitFamily Speed { get; } = new(Measure.Speed, new("rpm", Per: 60), new("1/min", Per: 60), new("1/s"));

    /// <summary>Absolute temperature.</summary>
    public static UnitFamily Temperature { get; } = new(Measure.Temperature, new("degC", Offset: 273.15), new("K"), new("degF", 5, 9, 459.67));

    /// <summary>Difference of two temperatures.</summary>
    public static UnitFamily TemperatureDifference { get; } = new(Measure.TemperatureDifference, new Unit("K"));

    /// <summary>Flow that grows with the pressure.</summary>
    public static UnitFamily Leakage { get; } = new(Measure.Leakage, [.. ((string[])["cm3/min", "mm3/min", "mm3/s", "cm3/s"]).Select(flow => Flow._units[flow].For(Pressure._units["bar"])), new("m3/s/Pa")]);

    /// <summary>Length.</summary>
    public static UnitFamily Length { get; } = new(Measure.Length, new("mm", 1e-3), new("cm", 1e-2), new("m"));

    /// <summary>Ratio. The unit <c>1</c> may be written or left out.</summary>
    public static UnitFamily Ratio { get; } = new(Measure.Ratio, new("%", Per: 1e2), new("1"));

    /// <summary>Kinematic viscosity.</summary>
    public static UnitFamily KinematicViscosity { get; } = new(Measure.KinematicViscosity, new("mm2/s", 1e-2, 1e4), new("cSt", 1e-2, 1e4), new("m2/s"));

    /// <summary>Consistency of a Herschel-Bulkley fluid.</summary>
    public static UnitFamily Consistency { get; } = new(Measure.Consistency, new("Pa.s^n"), new("Pa.s"));

    /// <summary>Density.</summary>
    public static UnitFamily Density { get; } = new(Measure.Density, new("kg/m3"), new("g/cm3", Per: 1e-3));

    /// <summary>Change for each kelvin, as a fraction.</summary>
    public static UnitFamily PerKelvin { get; } = new(Measure.PerKelvin, new Unit("1/K"));

    /// <summary>Voltage.</summary>
    public static UnitFamily Voltage { get; } = new(Measure.Voltage, new("V"), new("mV", 1e-3));

    /// <summary>Electric current.</summary>
    public static UnitFamily Current { get; } = new(Measure.Current, new("mA", 1e-3), new("A"), new("uA", 1e-6));

    /// <summary>Electric resistance.</summary>
    public static UnitFamily Resistance { get; } = new(Measure.Resistance, new("ohm"), new("kohm", 1e3), new("Mohm", 1e6));

    /// <summary>Power.</summary>
    public static UnitFamily Power { get; } = new(Measure.Power, new Unit("W"));

    /// <summary>Frequency.</summary>
    public static UnitFamily Frequency { get; } = new(Measure.Frequency, new("Hz"), new("kHz", 1e3));

    /// <summary>How far a clock's rate is off.</summary>
    public static UnitFamily ClockError { get; } = new(Measure.ClockError, new("ppm"), new("s/d", 1e6 / 86_400));

    /// <summary>Change for each unit of pressure, as a fraction.</summary>
    public static UnitFamily PerPressure { get; } = new(Measure.PerPressure, Ratio._units["%"].For(Pressure._units["bar"]), new Unit("1").For(Pressure._units["bar"]), new("1/Pa"));

    /// <summary>A plain number that counts something.</summary>
    public static UnitFamily Count { get; } = new(Measure.Count, new Unit("1"));

    /// <summary>Every family with units of its own.</summary>
    public static IReadOnlyList<UnitFamily> All { get; } = [Pressure, Volume, Flow, Time, Speed, Temperature, Length, KinematicViscosity, Consistency, Density, PerKelvin, PerPressure, Ratio, Leakage, TemperatureDifference, Voltage, Current, Resistance, Power, Frequency, ClockError];

    /// <summary>What is measured.</summary>
    public Measure Measure { get; }

    /// <summary>Name with its article, for messages, for instance <c>a pressure</c>.</summary>
    public string Name => Measure.Name;

    /// <summary>Unit of values inside.</summary>
    public string SiUnit => Measure.SiUnit;

    /// <summary>Something acceptable.</summary>
    public string Example => Measure.Example;

    /// <summary>The units a user may write, the usual one first.</summary>
    public IReadOnlyList<string> Units { get; }

    /// <summary>The usual unit.</summary>
    public string UsualUnit => Units[0];

    /// <summary>The units of a measure.</summary>
    public static UnitFamily Of(Measure measure) => All.FirstOrDefault(family => family.Measure == measure) ?? Count;

    /// <summary>The family whose SI unit a recorded signal has; counts where there is none.</summary>
    public static UnitFamily OfSi(string siUnit) => All.FirstOrDefault(family => family.SiUnit == siUnit && !ReferenceEquals(family, Ratio)) ?? Count;

    /// <summary>Whether a unit is of this family.</summary>
    public bool Has(string unit) => _units.ContainsKey(unit);

    /// <summary>The SI value of a value in a unit of this family.</summary>
    /// <exception cref="KeyNotFoundException">The unit is not of this family.</exception>
    public double ToSi(double value, string unit) => _units[unit].ToSi(value);

    /// <summary>The value in a unit of this family of an SI value.</summary>
    /// <exception cref="KeyNotFoundException">The unit is not of this family.</exception>
    public double FromSi(double value, string unit) => _units[unit].FromSi(value);

    /// <summary>The same, rounded to twelve digits, as a person would have written it.</summary>
    public double ShownFromSi(double value, string unit) =>
        double.Parse(FromSi(value, unit).ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A difference in a unit of this family of an SI difference: temperatures differ by their scale only.</summary>
    public double DifferenceFromSi(double difference, string unit) => FromSi(difference, unit) - (ReferenceEquals(this, Temperature) ? FromSi(0.0, unit) : 0.0);

    /// <summary>
    /// A unit: SI = (value + offset) / per x times, in this order. The factors are kept as they are, not as one quotient, so that a
    /// value reads as the same number always.
    /// </summary>
    private record Unit(string Symbol, double Times = 1, double Per = 1, double Offset = 0)
    {
        public virtual double ToSi(double value) => (value + Offset) / Per * Times;

        public virtual double FromSi(double value) => value / Times * Per - Offset;

        public Unit For(Unit other) => new Quotient(this, other);
    }

    /// <summary>One unit for each of another, for instance <c>cm3/min</c>.</summary>
    private sealed record Quotient(Unit Upper, Unit Lower) : Unit($"{Upper.Symbol}/{Lower.Symbol}")
    {
        public override double ToSi(double value) => Upper.ToSi(value) / Lower.ToSi(1.0);

        public override double FromSi(double value) => Upper.FromSi(value * Lower.ToSi(1.0));
    }
}
