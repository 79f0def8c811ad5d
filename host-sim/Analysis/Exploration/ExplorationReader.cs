using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Files.Sorts;
using LubeController.Scripts.Steps;

namespace LubeController.Analysis.Exploration;

/// <summary>Reads an exploration: settings made small, a step, and what may happen in it.</summary>
/// <param name="rules">The rest rules that are compiled in.</param>
public sealed class ExplorationReader(IReadOnlyList<RestRuleKind> rules)
{
    /// <summary>Most states where a file says nothing.</summary>
    public const int PresetMostStates = 5_000_000;

    private const int MostValues = 8;

    private static readonly QuantityRange StepRange = new(UnitFamily.Time, 1, 60_000, "ms");

    /// <summary>In the order of <see cref="PowerCut"/>.</summary>
    private static readonly string[] RestartCauses = ["logic-fault", "storage-corrupt", "settings-invalid"];

    /// <summary>Fields of an exploration file.</summary>
    public static KeySet Keys { get; } = new(
        "an exploration", "exploration", Inheritance.Key, "plant", "settings", "step", "inputs", "buttons", "power-cuts", "torn-saves", "restarts-with", "most-states");

    /// <summary>Fields of its inputs.</summary>
    public static KeySet InputKeys { get; } = new("the inputs", ControllerInputs.Settable.Select(NameOf));

    /// <summary>Name of an input as files write it.</summary>
    public static string NameOf(ControllerInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return ControllerInputs.CycleSwitches.Contains(input) ? input.Name["cycle-".Length..] : input.Name;
    }

    /// <summary>Reads a file, or returns null where a problem was added.</summary>
    public ExplorationFile? Read(string path, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        int before = problems.Count;
        MapNode? top = Inheritance.Read(path, problems);
        if (top == null || FileSort.IsOther(top, Keys, problems))
            return null;
        var file = new MapReader(top, Keys, problems);
        foreach ((string key, string remedy) in (ReadOnlySpan<(string, string)>)[("exploration", "write what it explores"), ("settings", "name the settings file"), ("step", "write for instance 'step: 500 ms'"), ("inputs", "write the inputs that vary, for instance 'switch-1: [off, on]'")])
        {
            if (!file.Has(key))
                file.Missing(key, remedy);
        }

        ControlSettings? settings = file.Single("settings") is { } named ? SettingsReader.Read(Inheritance.Resolve(named), rules, problems) : null;
        int stepMs = file.Quantity("step", StepRange) is { } step ? (int)Math.Round(step.Si * 1000.0) : 1;
        IReadOnlyList<Dimension> dimensions = Dimensions(file);
        IReadOnlyList<Button> buttons = Buttons(file);
        bool cuts = file.Either("power-cuts", "yes", "no") ?? false;
        bool torn = file.Either("torn-saves", "yes", "no") ?? false;
        List<PowerCut> power = cuts ? [PowerCut.Cut] : [];
        if (torn)
            power.Add(PowerCut.CutInSave);
        power.AddRange(Restarts(file));
        int most = (int)(file.Whole("most-states", 1, 200_000_000) ?? PresetMostStates);
        if (torn && !cuts)
            problems.Add(file.Map["torn-saves"]!, "a save is torn by a power cut, and there is none", "write 'power-cuts: yes'");
        if (problems.Count > before || settings == null)
            return null;
        try
        {
            var alphabet = new Alphabet(dimensions, buttons, power);
            return new ExplorationFile(
                path, file.Text("exploration")!, file.Text("plant") ?? "", file.Text("settings")!, settings, new CoreSetup(settings.Values, settings.Rule is { } rule ? rule.Make : null, stepMs, alphabet), most);
        }
        catch (ArgumentException many)
        {
            problems.Add(file.Map["inputs"]!, $"too many combinations: {many.Message.Split(" (", 2)[0]}", "let fewer inputs vary, or in fewer values");
            return null;
        }
    }

    private static List<Dimension> Dimensions(MapReader file)
    {
        var dimensions = new List<Dimension>();
        if (file.Group("inputs", InputKeys) is not { } group)
            return dimensions;
        foreach (ControllerInput input in ControllerInputs.Settable)
        {
            string name = NameOf(input);
            if (!group.Has(name))
                continue;
            var values = new List<int>();
            foreach (YamlNode node in group.List(name, MostValues))
            {
                if (Value(node, input, group.Problems) is { } value)
                    values.Add(value);
            }

            if (values.Count != values.Distinct().Count())
                group.Problems.Add(group.Map[name]!, "a value is written twice", "delete one");
            if (values.Count > 0)
                dimensions.Add(new Dimension(input, values));
        }

        return dimensions;
    }

    private static int? Value(YamlNode node, ControllerInput input, ProblemList problems)
    {
        UnitFamily? family = input.Kind == InputKind.Level ? null : UnitFamily.OfSi(input.SiUnit);
        if (node is not ScalarNode scalar)
        {
            problems.Add(node, "a value is wanted here", family == null ? "write off or on" : $"write for instance {family.Example}");
            return null;
        }

        if (family == null)
        {
            if (scalar.Text is "off" or "on")
                return scalar.Text == "on" ? 1 : 0;
            problems.Add(node, "a level is off or on", "write off or on");
            return null;
        }

        if (QuantityReader.TryRead(scalar.Text, family, out Quantity quantity, out string message, out string remedy))
        {
            double value = Math.Round(family.FromSi(quantity.Si, input.Unit) * input.PerUnit);
            if (value is >= -1e9 and <= 1e9)
                return (int)value;
            (message, remedy) = ("a value out of all reason", $"write for instance {family.Example}");
        }

        problems.Add(node, message, remedy);
        return null;
    }

    private static IEnumerable<PowerCut> Restarts(MapReader file)
    {
        if (!file.Has("restarts-with"))
            yield break;
        foreach (YamlNode node in file.List("restarts-with", RestartCauses.Length))
        {
            int known = node is ScalarNode scalar ? Array.IndexOf(RestartCauses, scalar.Text) : -1;
            if (known < 0)
                file.Problems.Add(node, "no alarm that a restart can bring", $"known: {string.Join(", ", RestartCauses)}");
            else
                yield return PowerCut.LoopFault + known;
        }
    }

    private static List<Button> Buttons(MapReader file)
    {
        var buttons = new List<Button>();
        if (!file.Has("buttons"))
            return buttons;
        foreach (YamlNode node in file.List("buttons", BenchWords.Buttons.Count))
        {
            int known = node is ScalarNode scalar ? BenchWords.Buttons.ToList().IndexOf(scalar.Text) : -1;
            if (known < 0)
                file.Problems.Add(node, "no such button", $"known: {string.Join(", ", BenchWords.Buttons)}");
            else if (!buttons.Contains((Button)known))
                buttons.Add((Button)known);
        }

        return buttons;
    }
}
