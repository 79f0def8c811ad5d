using LubeController.Core;
using LubeController.Plant.Description;
using LubeController.Scripts.Reading;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>That the settings reckon with no part that the plant has not: such a part would read as a fault.</summary>
internal static class FittedParts
{
    /// <summary>Adds a problem for each part that the settings name and the plant lacks.</summary>
    public static void Check(MapReader script, PlantDescription plant, ControlSettings settings, ProblemList problems)
    {
        int wanted = settings.Values[SettingField.SwitchCount];
        Check(wanted <= plant.CycleSwitches.Count, $"{wanted} cycle switches ('cycle-switches')", $"{plant.CycleSwitches.Count}");
        Check(!settings.Values.Is(SettingField.ShaftFitted) || plant.Shaft != null, "a shaft switch ('shaft-switch')", "no shaft");
        Check(!settings.Values.Is(SettingField.PressureTransmitterFitted) || plant.HasPressureTransmitter, "a pressure transmitter ('pressure-transmitter')", "none");
        Check(settings.Values.PressureSwitchUse == PressureSwitchUse.Nothing || plant.PressureSwitch != null, "a pressure switch ('pressure-switch-shows')", "none");

        void Check(bool fits, string asked, string has)
        {
            if (!fits)
                problems.Add(script.Map["settings"]!, $"the settings reckon with {asked}, the plant has {has}", "change the settings, or fit the part in the plant file");
        }
    }
}
