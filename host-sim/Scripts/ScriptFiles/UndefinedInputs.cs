using System.Linq;
using LubeController.Files.Reading;
using LubeController.Files.WiringFiles;
using LubeController.Plant.Description;
using LubeController.Plant.Inputs;
using LubeController.Plant.Sensors;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>What every digital input of a run, of sensors and of the wiring, makes of the zone that IEC 61131-2 leaves undefined.</summary>
internal static class UndefinedInputs
{
    /// <summary>The field of a script; without it each input keeps what the plant file says.</summary>
    public const string Key = "undefined-inputs";

    /// <summary>The plant with its inputs as the script says; adds a problem where there is nothing to say.</summary>
    public static PlantDescription Apply(MapReader script, PlantDescription plant)
    {
        if (script.Choice(Key, InputWords.Policies) is not { } chosen)
            return plant;
        if (!HasAny(plant))
            script.Problems.Add(script.Map[Key]!, "no input of the plant has an undefined zone: it has neither a sensor nor a supervisory input by IEC 61131-2", "delete it, or name a plant with 'sensor' or 'wiring'");
        var policy = (UndefinedPolicy)chosen;
        return plant with
        {
            CycleSwitches = [.. plant.CycleSwitches.Select(cycle => cycle.Sensor is { } sensor ? cycle with { Sensor = sensor with { Undefined = policy } } : cycle)],
            Wiring = plant.Wiring is not { } wiring ? null : wiring with
            {
                Inputs = [.. wiring.Inputs.Select(input => input.Supervision == null ? input with { Undefined = policy } : input)],
            },
        };
    }

    private static bool HasAny(PlantDescription plant) =>
        plant.CycleSwitches.Any(cycle => cycle.Sensor is { Switch.Output: not SwitchOutput.Namur })
        || (plant.Wiring is { } wiring && wiring.Inputs.Any(input => input.Supervision == null));
}
