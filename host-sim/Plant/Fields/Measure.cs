namespace LubeController.Plant.Fields;

/// <summary>What a number measures, and so the units in which a file may write it.</summary>
/// <param name="Name">Name with its article, for messages, for instance <c>a pressure</c>.</param>
/// <param name="SiUnit">Unit in which descriptions hold it; <c>1</c> for a plain number.</param>
/// <param name="Example">A value as a user would write it.</param>
public sealed record Measure(string Name, string SiUnit, string Example)
{
    /// <summary>Gauge pressure or pressure difference.</summary>
    public static Measure Pressure { get; } = new("a pressure", "Pa", "40 bar");

    /// <summary>Volume.</summary>
    public static Measure Volume { get; } = new("a volume", "m3", "2 cm3");

    /// <summary>Volume flow.</summary>
    public static Measure Flow { get; } = new("a flow", "m3/s", "250 cm3/min");

    /// <summary>Duration.</summary>
    public static Measure Time { get; } = new("a time", "s", "90 s");

    /// <summary>Rotational speed or rate of strokes.</summary>
    public static Measure Speed { get; } = new("a speed", "1/s", "1500 rpm");

    /// <summary>Absolute temperature.</summary>
    public static Measure Temperature { get; } = new("a temperature", "K", "20 degC");

    /// <summary>Difference of two temperatures.</summary>
    public static Measure TemperatureDifference { get; } = new("a temperature difference", "K", "-20 K");

    /// <summary>Flow that grows with the pressure, as through a leak or a valve.</summary>
    public static Measure Leakage { get; } = new("a flow per pressure", "m3/s/Pa", "0.6 cm3/min/bar");

    /// <summary>Length.</summary>
    public static Measure Length { get; } = new("a length", "m", "6 mm");

    /// <summary>Ratio.</summary>
    public static Measure Ratio { get; } = new("a ratio", "1", "90 %");

    /// <summary>Kinematic viscosity.</summary>
    public static Measure KinematicViscosity { get; } = new("a kinematic viscosity", "m2/s", "220 mm2/s");

    /// <summary>Consistency of a Herschel-Bulkley fluid, n being its flow index; with n = 1 a dynamic viscosity.</summary>
    public static Measure Consistency { get; } = new("a consistency", "Pa.s^n", "4.1 Pa.s^n");

    /// <summary>Density.</summary>
    public static Measure Density { get; } = new("a density", "kg/m3", "890 kg/m3");

    /// <summary>Change for each kelvin, as a fraction.</summary>
    public static Measure PerKelvin { get; } = new("a temperature coefficient", "1/K", "0.02 1/K");

    /// <summary>Voltage.</summary>
    public static Measure Voltage { get; } = new("a voltage", "V", "24 V");

    /// <summary>Electric current.</summary>
    public static Measure Current { get; } = new("a current", "A", "2 mA");

    /// <summary>Electric resistance.</summary>
    public static Measure Resistance { get; } = new("a resistance", "ohm", "4.7 kohm");

    /// <summary>Power.</summary>
    public static Measure Power { get; } = new("a power", "W", "2 W");

    /// <summary>Frequency.</summary>
    public static Measure Frequency { get; } = new("a frequency", "Hz", "100 Hz");

    /// <summary>How far a clock's rate is off, above zero fast, in millionths. A second in a day is 11.57 ppm.</summary>
    public static Measure ClockError { get; } = new("a clock error", "ppm", "100 ppm");

    /// <summary>Change for each unit of pressure, as a fraction.</summary>
    public static Measure PerPressure { get; } = new("a fraction per pressure", "1/Pa", "0.05 %/bar");

    /// <summary>A plain number that counts something.</summary>
    public static Measure Count { get; } = new("a count", "1", "3");
}
