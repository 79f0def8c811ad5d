using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Pump;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>That the settings reckon with no part that the plant has not: such a part would read as a fault.</summary>
internal static class FittedParts
{
    /// <summary>Adds a problem for each part that the settings name and the plant lacks.</summary>
    public static void Check(MapReader script, PlantDescription plant, ControlSettings settings, ProblemList problems)
    {
        if (plant.CycleSwitches.Count > Inputs.MaxCycleSwitches)
            problems.Add(script.Map["plant"]!, $"the plant has {plant.CycleSwitches.Count} cycle switches, the controller takes {Inputs.MaxCycleSwitches}", "delete some in the plant file");
        int wanted = settings.Values[SettingField.SwitchCount];
        Check(wanted <= plant.CycleSwitches.Count, $"{wanted} cycle switches ('cycle-switches')", $"{plant.CycleSwitches.Count}");
        Check(!settings.Values.Is(SettingField.ShaftFitted) || plant.Shaft != null, "a shaft switch ('shaft-switch')", "no shaft");
        Check(!settings.Values.Is(SettingField.PressureTransmitterFitted) || plant.HasPressureTransmitter, "a pressure transmitter ('pressure-transmitter')", "none");
        Check(settings.Values.DoseMode != DoseMode.Pressure || plant.VentValve != null, "a vent valve ('dose-by: pressure')", "none");
        Check(!settings.Values.Is(SettingField.OverloadFitted) || plant.Pump.OverloadTripS != null, "an overload contact ('pump-overload-contact')", "a pump without 'overload-trip-time'");
        Check(!settings.Values.Is(SettingField.PumpRevolutionsFitted) || plant.Pump is CamPumpDescription, "counted revolutions ('pump-revolution-sensor')", "a pump that has none");
        Check(settings.Values.PressureSwitchUse == PressureSwitchUse.Nothing || plant.PressureSwitch != null, "a pressure switch ('pressure-switch-shows')", "none");

        void Check(bool fits, string asked, string has)
        {
            if (!fits)
                problems.Add(script.Map["settings"]!, $"the settings reckon with {asked}, the plant has {has}", "change the settings, or fit the part in the plant file");
        }
    }

    /// <summary>What is allowed and still deserves a word: doses that nothing watches, and doses of half cycles.</summary>
    public static IEnumerable<Problem> Remarks(MapReader script, PlantDescription plant, ControlSettings settings)
    {
        YamlNode place = script.Map["settings"]!;
        if (settings.Values.DoseMode == DoseMode.RunTime)
            yield return new Problem(place.Place, "dose-by", "run-time", "a dose by run time is unmonitored: nothing shows that anything was delivered", "write 'dose-by: cycles' where the divider has a cycle switch");
        if (settings.Values.DoseMode != DoseMode.Cycles || settings.Values[SettingField.EdgesPerCycle] != 2)
            yield break;
        HalfCycle half = HalfCycle.Of(plant, plant.CycleSwitches[settings.Values.DoseEndingIndex]);
        string volumes = string.Create(CultureInfo.InvariantCulture, $"the two edges do not halve the volume: {half.OnM3 * 1e6:G4} cm3 while the switch is on, {half.OffM3 * 1e6:G4} cm3 while it is off");
        bool twin = plant.AllSections.Any(section => section.Outlets == SectionOutlets.Twin);
        yield return new Problem(place.Place, "edges-per-cycle", "2", volumes + (twin ? "; half a cycle feeds only one side of each twin section" : ""), "write 'edges-per-cycle: 1' for full cycles");
    }
}
