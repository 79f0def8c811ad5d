using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads steps that set faults and take them away.</summary>
internal sealed class FaultReader(BenchVocabulary? vocabulary)
{
    private const string Any = "any";

    /// <summary>The fault set, or null where a problem was added.</summary>
    public SetFault? Fault(MapReader step)
    {
        if (Kind(step, "fault") is not { } kind || Part(step, kind) is not { } part)
            return null;
        int before = step.Problems.Count;
        var fault = new SetFault(kind, part, null)
        {
            AnyPart = IsAny(part, kind),
            OverUs = Over(step, kind),
            SecondSi = Second(step, kind),
        };
        fault = WithMagnitude(step, fault);
        return step.Problems.Count == before ? fault : null;
    }

    /// <summary>The fault taken away, or null where a problem was added.</summary>
    public HealFault? Heal(MapReader step) =>
        Kind(step, "heal") is { } kind && Part(step, kind) is { } part ? new HealFault(kind, part) { AnyPart = IsAny(part, kind) } : null;

    private static SetFault WithMagnitude(MapReader step, SetFault fault)
    {
        if (fault.Kind.Magnitude is not { } range)
        {
            Refuse(step, "magnitude", $"the fault {fault.Kind.Name} has no magnitude");
            return fault;
        }

        if (DrawReader.Stands(step, "magnitude"))
            return fault with { Draw = DrawReader.Read(step, "magnitude", range) };
        if (!step.Has("magnitude") && fault.Kind.DefaultMagnitude == null)
            step.Missing("magnitude", $"write a value from {range}");
        return fault with { MagnitudeSi = step.Quantity("magnitude", range)?.Si ?? fault.Kind.DefaultMagnitude };
    }

    private static long Over(MapReader step, BenchFault kind)
    {
        if (kind.HarmlessMagnitude != null)
            return step.Quantity("over", ScriptRanges.Over) is { } time ? Microseconds.Of(time) : 0;
        Refuse(step, "over", $"the fault {kind.Name} can only come at once");
        return 0;
    }

    private static double? Second(MapReader step, BenchFault kind)
    {
        if (kind.Second is not { } number)
        {
            Refuse(step, "with", $"the fault {kind.Name} has no second number");
            return null;
        }

        if (step.Group("with", ScriptKeys.With) is not { } group)
            return number.Default;
        foreach (MapEntry entry in group.Map.Entries.Where(entry => entry.Key != number.Name && ScriptKeys.With.Has(entry.Key)))
            step.Problems.Add(new Problem(entry.KeyPlace, group.Field(entry.Key), entry.Value.Shown, $"the fault {kind.Name} has no '{entry.Key}'", $"write '{number.Name}', or delete it"));
        return group.Quantity(number.Name, number.Range)?.Si ?? number.Default;
    }

    private static void Refuse(MapReader step, string key, string message)
    {
        if (step.Map[key] is { } needless)
            step.Problems.Add(needless, message, "delete it");
    }

    private static bool IsAny(string part, BenchFault kind) => part == Any && !kind.Parts.Contains(Any);

    private BenchFault? Kind(MapReader step, string key)
    {
        if (vocabulary == null)
            return null;
        string[] names = vocabulary.Faults.Select(kind => kind.Name).ToArray();
        // A fault that there is, of a part that this plant has not, is no slip of the pen.
        if (step.Map[key] is ScalarNode written && !names.Contains(written.Text) && FaultCatalogue.Find(written.Text) is { } elsewhere)
        {
            step.Problems.Add(written, $"the plant has no such part: {elsewhere.Name} concerns {elsewhere.Place}", "take another plant, add the part to the plant file, or set another fault; 'lubebench faults --plant FILE' lists those a plant can have");
            return null;
        }

        return step.Choice(key, names) is { } chosen ? vocabulary.Faults[chosen] : null;
    }

    private static string? Part(MapReader step, BenchFault kind)
    {
        if (kind.Parts.Count > 0)
        {
            if (!step.Has("part") && kind.Parts.Count == 1)
                return kind.Parts[0];
            if (!step.Has("part"))
                step.Missing("part", $"the plant has {NearestName.Some(kind.Parts)}; '{Any}' leaves it to the seed");
            IReadOnlyList<string> words = kind.Parts.Contains(Any) ? kind.Parts : [.. kind.Parts, Any];
            return step.Choice("part", words) is { } chosen ? words[chosen] : null;
        }

        if (step.Single("part") is not { } needless)
            return "";
        step.Problems.Add(needless, $"the fault {kind.Name} concerns the whole plant", "delete 'part'");
        return null;
    }
}
