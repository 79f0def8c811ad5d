using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Description;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads the one action of a step.</summary>
internal sealed class ActionReader(BenchVocabulary? vocabulary, PlantDescription? plant)
{
    private const long PresetPressUs = 500_000;

    private static readonly string[] InputNames = [.. ControllerInputs.Settable.Select(input => input.Name)];

    private readonly FaultReader _faults = new(vocabulary);

    private static readonly Dictionary<string, string[]> Companions = new(StringComparer.Ordinal)
    {
        ["part"] = ["fault", "heal"],
        ["magnitude"] = ["fault"],
        ["with"] = ["fault"],
        ["over"] = ["fault"],
        ["for"] = ["press", "shelve"],
        ["to"] = ["set"],
        ["ramp"] = ["shaft-speed"],
    };

    /// <summary>The action, or null where a problem was added.</summary>
    public StepAction? Read(MapReader step)
    {
        string? key = step.ExactlyOne(ScriptKeys.Actions);
        if (key == null)
            return null;
        RefuseStrangers(step, key);
        return key switch
        {
            "fault" => _faults.Fault(step),
            "heal" => _faults.Heal(step),
            "press" => step.Choice("press", BenchWords.Buttons) is { } pressed ? new PressButton((Button)pressed, Time(step, "for", ScriptRanges.Press, PresetPressUs)) : null,
            "hold" => step.Choice("hold", BenchWords.Buttons) is { } held ? new MoveButton((Button)held, Down: true) : null,
            "release" => step.Choice("release", BenchWords.Buttons) is { } released ? new MoveButton((Button)released, Down: false) : null,
            "set" => Input(step),
            "shaft-speed" => ShaftSpeed(step),
            "temperature" => step.Quantity("temperature", ScriptRanges.Temperature) is { } temperature ? new SetTemperature(temperature.Si) : null,
            "refill" => Refill(step),
            "shelve" or "unshelve" or "out-of-service" or "in-service" => Hide(step, key),
            "power" => step.Either("power", "on", "off") is { } on ? new SetPower(on) : null,
            _ => step.Text("mark") is { } remark ? new MarkTime(remark) : null,
        };
    }

    private static void RefuseStrangers(MapReader step, string action)
    {
        foreach ((string companion, string[] actions) in Companions)
        {
            if (!actions.Contains(action) && step.Map.Find(companion) is { } entry)
                step.Problems.Add(new Problem(entry.KeyPlace, step.Field(companion), entry.Value.Shown, $"'{companion}' does not go with '{action}'", $"it goes with {string.Join(" and ", actions)}"));
        }
    }

    private static long Time(MapReader step, string key, QuantityRange range, long preset) =>
        step.Quantity(key, range) is { } time ? Microseconds.Of(time) : preset;

    private static StepAction? Input(MapReader step)
    {
        if (!step.Has("to"))
            step.Missing("to", "write 'to: on' or 'to: off'");
        return step.Choice("set", InputNames) is { } input ? InputReader.Read(step, ControllerInputs.Settable[input]) : null;
    }

    private static HideAlarm? Hide(MapReader step, string key)
    {
        var deed = (AlarmDeed)BenchWords.AlarmDeeds.ToList().IndexOf(key);
        if (deed == AlarmDeed.Shelve && !step.Has("for"))
            step.Missing("for", "write how long, for instance 'for: 30 min'");
        long forUs = deed == AlarmDeed.Shelve ? Time(step, "for", ScriptRanges.Shelving, 0) : 0;
        return step.Choice(key, BenchWords.Alarms) is { } alarm ? new HideAlarm(deed, (AlarmId)alarm, forUs) : null;
    }

    private SetShaftSpeed? ShaftSpeed(MapReader step)
    {
        if (plant is { Shaft: null })
            step.Problems.Add(step.Map["shaft-speed"]!, "the plant has no shaft", "add 'shaft' to the plant file, or delete the step");
        long ramp = Time(step, "ramp", ScriptRanges.Ramp, 0);
        return step.Quantity("shaft-speed", ScriptRanges.Speed) is { } speed ? new SetShaftSpeed(speed.Si, ramp) : null;
    }

    private RefillReservoir? Refill(MapReader step)
    {
        double capacity = plant?.Reservoir.CapacityM3 ?? double.MaxValue;
        if (step.Quantity("refill", ScriptRanges.Refill) is not { } content)
            return null;
        if (content.Si <= capacity)
            return new RefillReservoir(content.Si);
        step.Problems.Add(step.Map["refill"]!, "the reservoir does not hold so much", $"write at most {new Quantity(UnitFamily.Volume.FromSi(capacity, content.Unit), content.Unit, UnitFamily.Volume)}");
        return null;
    }
}
