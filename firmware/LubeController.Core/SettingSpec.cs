namespace LubeController.Core;

/// <summary>Unit in which the core keeps a setting.</summary>
public enum SettingUnit
{
    /// <summary>A count, without unit.</summary>
    Count = 0,

    /// <summary>Milliseconds.</summary>
    Milliseconds = 1,

    /// <summary>Microseconds.</summary>
    Microseconds = 2,

    /// <summary>Millibar gauge.</summary>
    Millibar = 3,

    /// <summary>Tenths of a degree Celsius.</summary>
    DeciCelsius = 4,

    /// <summary>Revolutions per minute.</summary>
    PerMinute = 5,

    /// <summary>Per cent.</summary>
    Percent = 6,

    /// <summary>No (0) or yes (1).</summary>
    Flag = 7,

    /// <summary>One of <see cref="SettingSpec.Choices"/>, by index.</summary>
    Choice = 8,

    /// <summary>Millivolts.</summary>
    Millivolt = 9,

    /// <summary>Cubic millimetres.</summary>
    CubicMillimetre = 10,

    /// <summary>Cubic millimetres per minute.</summary>
    CubicMillimetrePerMinute = 11,

    /// <summary>Tenths of a kelvin, of a temperature difference.</summary>
    DeciKelvin = 12,
}

/// <summary>Name, unit, range and preset of one setting. Immutable.</summary>
public sealed class SettingSpec
{
    // Null where the unit is not Choice: an empty array for each setting would cost heap.
    private readonly string[]? _choices;
    private readonly string _name;
    private readonly SettingUnit _unit;
    private readonly int _minimum;
    private readonly int _maximum;
    private readonly int _preset;
    private readonly string _meaning;

    /// <summary>Describes a setting.</summary>
    public SettingSpec(string name, SettingUnit unit, int minimum, int maximum, int preset, string meaning)
    {
        _name = name;
        _unit = unit;
        _minimum = minimum;
        _maximum = maximum;
        _preset = preset;
        _meaning = meaning;
    }

    /// <summary>Describes a setting that takes one of some words.</summary>
    public SettingSpec(string name, string[] choices, int preset, string meaning)
        : this(name, SettingUnit.Choice, 0, choices.Length - 1, preset, meaning)
    {
        _choices = choices;
    }

    /// <summary>Lower case with hyphens; never null.</summary>
    public string Name => _name;

    /// <summary>Unit of the value.</summary>
    public SettingUnit Unit => _unit;

    /// <summary>Smallest value accepted.</summary>
    public int Minimum => _minimum;

    /// <summary>Largest value accepted.</summary>
    public int Maximum => _maximum;

    /// <summary>Value before anything is set.</summary>
    public int Preset => _preset;

    /// <summary>One sentence for people.</summary>
    public string Meaning => _meaning;

    /// <summary>The words of a <see cref="SettingUnit.Choice"/>, by index; empty for the other units.</summary>
    public string[] Choices => _choices ?? new string[0];
}
