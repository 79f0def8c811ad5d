namespace LubeController.Core;

/// <summary>What ends a dose.</summary>
public enum DoseMode
{
    /// <summary>A set number of counted edges of the dose-ending switch.</summary>
    Cycles = 0,

    /// <summary>Pump-on time; unmonitored, nothing shows that anything was delivered.</summary>
    RunTime = 1,

    /// <summary>Line pressure reached, held and vented, on a single-line system with a vent valve.</summary>
    Pressure = 2,
}

/// <summary>What ends a rest.</summary>
public enum RestMode
{
    /// <summary>Elapsed time.</summary>
    Time = 0,

    /// <summary>Shaft revolutions, by time while the shaft signal is lost.</summary>
    Shaft = 1,

    /// <summary>Time or shaft revolutions, whichever comes first.</summary>
    Either = 2,

    /// <summary>A user's own rule, by time while the rule is at fault.</summary>
    Rule = 3,
}

/// <summary>What the pressure switch shows when on.</summary>
public enum PressureSwitchUse
{
    /// <summary>No pressure switch is fitted.</summary>
    Nothing = 0,

    /// <summary>That line pressure is reached.</summary>
    Reached = 1,

    /// <summary>That line pressure is above its limit.</summary>
    Limit = 2,
}

/// <summary>
/// All settings of one controller, as integers in the units of <see cref="SettingTable"/>. Presets until set. Nothing is
/// refused here: <see cref="SettingsCheck"/> checks settings as a whole.
/// </summary>
public sealed class Settings
{
    private readonly int[] _values = new int[SettingField.Count];

    /// <summary>Makes settings at their presets.</summary>
    public Settings()
    {
        for (int field = 0; field < SettingField.Count; field++)
            _values[field] = SettingTable.Spec(field).Preset;
    }

    /// <summary>What ends a dose.</summary>
    public DoseMode DoseMode => (DoseMode)_values[SettingField.DoseMode];

    /// <summary>What ends a rest.</summary>
    public RestMode RestMode => (RestMode)_values[SettingField.RestMode];

    /// <summary>What the pressure switch shows.</summary>
    public PressureSwitchUse PressureSwitchUse => (PressureSwitchUse)_values[SettingField.PressureSwitchUse];

    /// <summary>Index of the dose-ending switch, from 0.</summary>
    public int DoseEndingIndex => _values[SettingField.DoseEndingSwitch] - 1;

    /// <summary>Shaft pulses of a rest by revolutions; valid settings keep it below 2^31.</summary>
    public int RestShaftPulses => _values[SettingField.RestRevolutions] * _values[SettingField.ShaftPulsesPerRevolution];

    /// <summary>Value of a setting.</summary>
    public int this[int field]
    {
        get => _values[field];
        set => _values[field] = value;
    }

    /// <summary>Whether a flag setting is on.</summary>
    public bool Is(int field) => _values[field] != 0;

    /// <summary>Value of a setting of a cycle switch.</summary>
    public int OfSwitch(int index, int field) => _values[SettingField.OfSwitch(index, field)];

    /// <summary>Takes over every value of other settings.</summary>
    public void CopyFrom(Settings other)
    {
        for (int field = 0; field < SettingField.Count; field++)
            _values[field] = other._values[field];
    }
}
