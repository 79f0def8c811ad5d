using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;
using UnitsNet.Units;

namespace LubeController.Files.Quantities;

/// <summary>
/// A physical quantity with the units a user may write and the SI unit kept inside. The units stand in a table of our
/// own and only the conversion is the library's: its parser of abbreviations works by reflection, which a host compiled
/// ahead of time does without.
/// </summary>
public sealed class UnitFamily
{
    private static readonly (string Unit, VolumeUnit Of)[] VolumeUnits =
    [
        ("cm3", VolumeUnit.CubicCentimeter), ("ml", VolumeUnit.Milliliter), ("l", VolumeUnit.Liter),
        ("mm3", VolumeUnit.CubicMillimeter), ("m3", VolumeUnit.CubicMeter),
    ];

    private static readonly (string Unit, DurationUnit Of)[] TimeUnits =
    [
        ("ms", DurationUnit.Millisecond), ("s", DurationUnit.Second), ("min", DurationUnit.Minute),
        ("h", DurationUnit.Hour), ("d", DurationUnit.Day), ("us", DurationUnit.Microsecond),
    ];

    // As frequencies: the library's rotational speeds pass through radians, after which 300 rpm are no longer 5 in a second.
    private static readonly (string Unit, FrequencyUnit Of)[] SpeedUnits =
    [
        ("rpm", FrequencyUnit.CyclePerMinute), ("1/min", FrequencyUnit.CyclePerMinute), ("1/s", FrequencyUnit.Hertz),
    ];

    private const double PascalsOfOneBar = 1e5;
    private const double SecondsPerDayInPpm = 1e6 / 86_400;

    private readonly Dictionary<string, Func<double, double>> _toSi = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Func<double, double>> _fromSi = new(StringComparer.Ordinal);
    private readonly List<string> _units = [];

    private UnitFamily(string name, string siUnit, string example)
    {
        Name = name;
        SiUnit = siUnit;
        Example = example;
    }

    /// <summary>Gauge pressure or pressure difference; pascal inside.</summary>
    public static UnitFamily Pressure { get; } = new UnitFamily("a pressure", "Pa", "40 bar")
        .With("bar", value => UnitsNet.Pressure.From(value, PressureUnit.Bar).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).Bars)
        .With("kPa", value => UnitsNet.Pressure.From(value, PressureUnit.Kilopascal).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).Kilopascals)
        .With("MPa", value => UnitsNet.Pressure.From(value, PressureUnit.Megapascal).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).Megapascals)
        .With("GPa", value => UnitsNet.Pressure.From(value, PressureUnit.Gigapascal).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).Gigapascals)
        .With("Pa", value => value, value => value)
        .With("mbar", value => UnitsNet.Pressure.From(value, PressureUnit.Millibar).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).Millibars)
        .With("psi", value => UnitsNet.Pressure.From(value, PressureUnit.PoundForcePerSquareInch).Pascals, value => UnitsNet.Pressure.From(value, PressureUnit.Pascal).PoundsForcePerSquareInch);

    /// <summary>Volume; cubic metre inside.</summary>
    public static UnitFamily Volume { get; } = MakeVolume();

    /// <summary>Volume flow; cubic metre per second inside.</summary>
    public static UnitFamily Flow { get; } = MakeFlow();

    /// <summary>Duration; second inside.</summary>
    public static UnitFamily Time { get; } = MakeTime();

    /// <summary>Rotational speed or rate of strokes; per second inside.</summary>
    public static UnitFamily Speed { get; } = MakeSpeed();

    /// <summary>Absolute temperature; kelvin inside.</summary>
    public static UnitFamily Temperature { get; } = new UnitFamily("a temperature", "K", "20 degC")
        .With("degC", value => UnitsNet.Temperature.From(value, TemperatureUnit.DegreeCelsius).Kelvins, value => UnitsNet.Temperature.From(value, TemperatureUnit.Kelvin).DegreesCelsius)
        .With("K", value => value, value => value)
        .With("degF", value => UnitsNet.Temperature.From(value, TemperatureUnit.DegreeFahrenheit).Kelvins, value => UnitsNet.Temperature.From(value, TemperatureUnit.Kelvin).DegreesFahrenheit);

    /// <summary>Difference of two temperatures; kelvin inside.</summary>
    public static UnitFamily TemperatureDifference { get; } = new UnitFamily("a temperature difference", "K", "-20 K")
        .With("K", value => value, value => value);

    /// <summary>Flow that grows with the pressure, as through a leak or a valve; cubic metre per second and pascal inside.</summary>
    public static UnitFamily Leakage { get; } = MakeLeakage();

    /// <summary>Length; metre inside.</summary>
    public static UnitFamily Length { get; } = new UnitFamily("a length", "m", "6 mm")
        .With("mm", value => UnitsNet.Length.From(value, LengthUnit.Millimeter).Meters, value => UnitsNet.Length.From(value, LengthUnit.Meter).Millimeters)
        .With("cm", value => UnitsNet.Length.From(value, LengthUnit.Centimeter).Meters, value => UnitsNet.Length.From(value, LengthUnit.Meter).Centimeters)
        .With("m", value => value, value => value);

    /// <summary>Ratio; a fraction of one inside. The unit <c>1</c> may be written or left out.</summary>
    public static UnitFamily Ratio { get; } = new UnitFamily("a ratio", "1", "90 %")
        .With("%", value => UnitsNet.Ratio.From(value, RatioUnit.Percent).DecimalFractions, value => UnitsNet.Ratio.From(value, RatioUnit.DecimalFraction).Percent)
        .With("1", value => value, value => value);

    /// <summary>Kinematic viscosity; square metre per second inside.</summary>
    public static UnitFamily KinematicViscosity { get; } = new UnitFamily("a kinematic viscosity", "m2/s", "220 mm2/s")
        .With("mm2/s", value => UnitsNet.KinematicViscosity.From(value, KinematicViscosityUnit.Centistokes).SquareMetersPerSecond, value => UnitsNet.KinematicViscosity.From(value, KinematicViscosityUnit.SquareMeterPerSecond).Centistokes)
        .With("cSt", value => UnitsNet.KinematicViscosity.From(value, KinematicViscosityUnit.Centistokes).SquareMetersPerSecond, value => UnitsNet.KinematicViscosity.From(value, KinematicViscosityUnit.SquareMeterPerSecond).Centistokes)
        .With("m2/s", value => value, value => value);

    /// <summary>Consistency of a Herschel-Bulkley fluid, n being its flow index; with n = 1 a dynamic viscosity.</summary>
    public static UnitFamily Consistency { get; } = new UnitFamily("a consistency", "Pa.s^n", "4.1 Pa.s^n")
        .With("Pa.s^n", value => value, value => value)
        .With("Pa.s", value => value, value => value);

    /// <summary>Density; kilogram per cubic metre inside.</summary>
    public static UnitFamily Density { get; } = new UnitFamily("a density", "kg/m3", "890 kg/m3")
        .With("kg/m3", value => value, value => value)
        .With("g/cm3", value => UnitsNet.Density.From(value, DensityUnit.GramPerCubicCentimeter).KilogramsPerCubicMeter, value => UnitsNet.Density.From(value, DensityUnit.KilogramPerCubicMeter).GramsPerCubicCentimeter);

    /// <summary>Change for each kelvin, as a fraction; per kelvin inside.</summary>
    public static UnitFamily PerKelvin { get; } = new UnitFamily("a temperature coefficient", "1/K", "0.02 1/K")
        .With("1/K", value => value, value => value);

    /// <summary>Voltage; volt inside.</summary>
    public static UnitFamily Voltage { get; } = new UnitFamily("a voltage", "V", "24 V")
        .With("V", value => value, value => value)
        .With("mV", value => UnitsNet.ElectricPotential.From(value, ElectricPotentialUnit.Millivolt).Volts, value => UnitsNet.ElectricPotential.From(value, ElectricPotentialUnit.Volt).Millivolts);

    /// <summary>Electric current; ampere inside.</summary>
    public static UnitFamily Current { get; } = new UnitFamily("a current", "A", "2 mA")
        .With("mA", value => ElectricCurrent.From(value, ElectricCurrentUnit.Milliampere).Amperes, value => ElectricCurrent.From(value, ElectricCurrentUnit.Ampere).Milliamperes)
        .With("A", value => value, value => value)
        .With("uA", value => ElectricCurrent.From(value, ElectricCurrentUnit.Microampere).Amperes, value => ElectricCurrent.From(value, ElectricCurrentUnit.Ampere).Microamperes);

    /// <summary>Electric resistance; ohm inside.</summary>
    public static UnitFamily Resistance { get; } = new UnitFamily("a resistance", "ohm", "4.7 kohm")
        .With("ohm", value => value, value => value)
        .With("kohm", value => ElectricResistance.From(value, ElectricResistanceUnit.Kiloohm).Ohms, value => ElectricResistance.From(value, ElectricResistanceUnit.Ohm).Kiloohms)
        .With("Mohm", value => ElectricResistance.From(value, ElectricResistanceUnit.Megaohm).Ohms, value => ElectricResistance.From(value, ElectricResistanceUnit.Ohm).Megaohms);

    /// <summary>Power; watt inside.</summary>
    public static UnitFamily Power { get; } = new UnitFamily("a power", "W", "2 W")
        .With("W", value => value, value => value);

    /// <summary>Frequency; hertz inside.</summary>
    public static UnitFamily Frequency { get; } = new UnitFamily("a frequency", "Hz", "100 Hz")
        .With("Hz", value => value, value => value)
        .With("kHz", value => UnitsNet.Frequency.From(value, FrequencyUnit.Kilohertz).Hertz, value => UnitsNet.Frequency.From(value, FrequencyUnit.Hertz).Kilohertz);

    /// <summary>How far a clock's rate is off, above zero fast; millionths inside. A second in a day is 11.57 ppm.</summary>
    public static UnitFamily ClockError { get; } = new UnitFamily("a clock error", "ppm", "100 ppm")
        .With("ppm", value => value, value => value)
        .With("s/d", value => value * SecondsPerDayInPpm, value => value / SecondsPerDayInPpm);

    /// <summary>Change for each unit of pressure, as a fraction; per pascal inside.</summary>
    public static UnitFamily PerPressure { get; } = new UnitFamily("a fraction per pressure", "1/Pa", "0.05 %/bar")
        .With("%/bar", value => Ratio.ToSi(value, "%") / PascalsOfOneBar, value => Ratio.FromSi(value * PascalsOfOneBar, "%"))
        .With("1/bar", value => value / PascalsOfOneBar, value => value * PascalsOfOneBar)
        .With("1/Pa", value => value, value => value);

    /// <summary>A plain number that counts something.</summary>
    public static UnitFamily Count { get; } = new UnitFamily("a count", "1", "3")
        .With("1", value => value, value => value);

    /// <summary>Every family with units of its own.</summary>
    public static IReadOnlyList<UnitFamily> All { get; } = [Pressure, Volume, Flow, Time, Speed, Temperature, Length, KinematicViscosity, Consistency, Density, PerKelvin, PerPressure, Ratio, Leakage, TemperatureDifference, Voltage, Current, Resistance, Power, Frequency, ClockError];

    /// <summary>Name with its article, for messages, for instance <c>a pressure</c>.</summary>
    public string Name { get; }

    /// <summary>Unit of values inside.</summary>
    public string SiUnit { get; }

    /// <summary>Something acceptable.</summary>
    public string Example { get; }

    /// <summary>The units a user may write, the usual one first.</summary>
    public IReadOnlyList<string> Units => _units;

    /// <summary>The usual unit.</summary>
    public string UsualUnit => _units[0];

    /// <summary>Whether a unit is of this family.</summary>
    public bool Has(string unit) => _toSi.ContainsKey(unit);

    /// <summary>The SI value of a value in a unit of this family.</summary>
    /// <exception cref="KeyNotFoundException">The unit is not of this family.</exception>
    public double ToSi(double value, string unit) => _toSi[unit](value);

    /// <summary>The value in a unit of this family of an SI value.</summary>
    /// <exception cref="KeyNotFoundException">The unit is not of this family.</exception>
    public double FromSi(double value, string unit) => _fromSi[unit](value);

    /// <summary>A difference in a unit of this family of an SI difference: temperatures differ by their scale only.</summary>
    public double DifferenceFromSi(double difference, string unit) =>
        ReferenceEquals(this, Temperature) ? FromSi(difference, unit) - FromSi(0.0, unit) : FromSi(difference, unit);

    /// <summary>The family whose SI unit a recorded signal has; counts where there is none.</summary>
    public static UnitFamily OfSi(string siUnit) => All.FirstOrDefault(family => family.SiUnit == siUnit && !ReferenceEquals(family, Ratio)) ?? Count;

    private static UnitFamily MakeVolume()
    {
        var family = new UnitFamily("a volume", "m3", "2 cm3");
        foreach ((string unit, VolumeUnit of) in VolumeUnits)
            family.With(unit, value => UnitsNet.Volume.From(value, of).CubicMeters, value => UnitsNet.Volume.From(value, VolumeUnit.CubicMeter).As(of));
        return family;
    }

    private static UnitFamily MakeTime()
    {
        var family = new UnitFamily("a time", "s", "90 s");
        foreach ((string unit, DurationUnit of) in TimeUnits)
            family.With(unit, value => Duration.From(value, of).Seconds, value => Duration.From(value, DurationUnit.Second).As(of));
        return family;
    }

    private static UnitFamily MakeSpeed()
    {
        var family = new UnitFamily("a speed", "1/s", "1500 rpm");
        foreach ((string unit, FrequencyUnit of) in SpeedUnits)
            family.With(unit, value => UnitsNet.Frequency.From(value, of).Hertz, value => UnitsNet.Frequency.From(value, FrequencyUnit.Hertz).As(of));
        return family;
    }

    /// <summary>Volume and time converted apart: the library's own factors for flows are rounded to fourteen digits.</summary>
    private static UnitFamily MakeFlow()
    {
        var family = new UnitFamily("a flow", "m3/s", "250 cm3/min");
        foreach ((string time, DurationUnit ofTime) in TimeUnits.Where(unit => unit.Unit is "min" or "s" or "h" or "d").OrderBy(unit => unit.Unit != "min"))
        {
            double seconds = Duration.From(1.0, ofTime).Seconds;
            foreach ((string volume, VolumeUnit ofVolume) in VolumeUnits)
            {
                family.With(
                    $"{volume}/{time}",
                    value => UnitsNet.Volume.From(value, ofVolume).CubicMeters / seconds,
                    value => UnitsNet.Volume.From(value * seconds, VolumeUnit.CubicMeter).As(ofVolume));
            }
        }

        return family;
    }

    private static UnitFamily MakeLeakage()
    {
        var family = new UnitFamily("a flow per pressure", "m3/s/Pa", "0.6 cm3/min/bar");
        foreach (string flow in (string[])["cm3/min", "mm3/min", "mm3/s", "cm3/s"])
            family.With($"{flow}/bar", value => Flow.ToSi(value, flow) / PascalsOfOneBar, value => Flow.FromSi(value * PascalsOfOneBar, flow));
        return family.With("m3/s/Pa", value => value, value => value);
    }

    private UnitFamily With(string unit, Func<double, double> toSi, Func<double, double> fromSi)
    {
        _units.Add(unit);
        _toSi.Add(unit, toSi);
        _fromSi.Add(unit, fromSi);
        return this;
    }
}
