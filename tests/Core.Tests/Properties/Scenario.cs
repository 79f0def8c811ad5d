using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace LubeController.Core.Tests;

/// <summary>What a step of a random run does to the machine.</summary>
internal enum Deed
{
    Wait,
    ToggleSwitch,
    Start,
    Acknowledge,
    Reset,
    DoseNow,
    Prime,
    Stop,
    Running,
    LevelLow,
    LevelEmpty,
    PressureSwitch,
    Pressure,
    VentValveSticks,
    LineLeaks,
    Temperature,
    ShaftInterval,
    Block,
    OutputTest,
    Overload,
    Supply,
    PumpStands,
    ScanLate,
    Shelve,
    OutOfService,
    CutPower,
}

/// <summary>A deed, and the ticks that pass after it. Levels and buttons are toggled; other deeds take the argument.</summary>
internal sealed record Step(Deed Deed, int Argument, int Ticks);

/// <summary>A random run: settings, how fast the divider's pistons move, and what happens.</summary>
internal sealed record Scenario(int[] Settings, int[] StrokeTicks, IReadOnlyList<Step> Steps)
{
    public Settings MakeSettings()
    {
        var settings = new Settings();
        for (int field = 0; field < SettingField.Count; field++)
            settings[field] = Settings[field];
        return settings;
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        for (int field = 0; field < SettingField.Count; field++)
        {
            if (Settings[field] != SettingTable.Spec(field).Preset)
                text.Append(SettingTable.Spec(field).Name).Append('=').Append(Settings[field]).Append(' ');
        }

        text.Append("strokes=").AppendJoin(',', StrokeTicks).AppendLine();
        text.AppendJoin("; ", Steps.Select(step => $"{step.Deed} {step.Argument} +{step.Ticks}"));
        return text.ToString();
    }
}
