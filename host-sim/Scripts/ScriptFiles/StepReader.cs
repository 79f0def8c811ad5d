using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Description;
using LubeController.Plant.Fields;
using LubeController.Scripts.Predicates;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads the steps of a script.</summary>
internal sealed class StepReader
{
    private const int MostSteps = 1000;

    private readonly List<MapReader> _groups;
    private readonly ProblemList _problems;
    private readonly PredicateReader? _predicates;
    private readonly ActionReader _actions;
    private readonly Dictionary<string, int> _names = [];

    public StepReader(MapReader script, BenchVocabulary? vocabulary, PlantDescription? plant, PredicateReader? predicates)
    {
        _problems = script.Problems;
        _predicates = predicates;
        _actions = new ActionReader(vocabulary, plant);
        _groups = script.Groups("steps", ScriptKeys.Step, MostSteps).ToList();
        for (int index = 0; index < _groups.Count; index++)
            TakeName(_groups[index], index);
    }

    /// <summary>Index of each step that has a name.</summary>
    public IReadOnlyDictionary<string, int> Names => _names;

    /// <summary>The steps that could be read.</summary>
    public IReadOnlyList<Step> Read()
    {
        var steps = new List<Step>();
        for (int index = 0; index < _groups.Count; index++)
        {
            MapReader group = _groups[index];
            StepTime? time = Time(group);
            StepAction? action = _actions.Read(group);
            if (time != null && action != null)
                steps.Add(new Step(index, group.Has("name") ? group.Text("name") ?? "" : "", group.Map.Place, time, action));
        }

        if (steps.Count == _groups.Count)
            StepRings.Refuse(steps, _groups, _problems);
        return steps;
    }

    private void TakeName(MapReader group, int index)
    {
        if (group.Single("name") is not { } node)
            return;
        if (!TextForms.IsName(node.Text))
            _problems.Add(node, "a step's name has letters, digits and hyphens", "write for instance 'block-outlet'");
        else if (char.IsAsciiDigit(node.Text[0]))
            _problems.Add(node, "a step's name that begins with a digit would read as a time", "begin it with a letter");
        else if (!_names.TryAdd(node.Text, index))
            _problems.Add(node, $"two steps have this name, steps[{_names[node.Text]}] and steps[{index}]", "give each a name of its own");
    }

    private StepTime? Time(MapReader group)
    {
        string? key = group.ExactlyOne(["at", "after"]);
        if (key == null)
            return null;
        if (key == "at")
        {
            foreach (string other in (string[])["since", "delay"])
            {
                if (group.Map.Find(other) is { } entry)
                    _problems.Add(new Problem(entry.KeyPlace, group.Field(other), entry.Value.Shown, $"'{other}' belongs to 'after'", $"delete it, or write 'after' in place of 'at'"));
            }

            if (DrawReader.Stands(group, "at"))
                return DrawReader.Read(group, "at", ScriptRanges.TimeInMs) is { } range ? new AtDrawnTime(range) : null;
            return group.Quantity("at", ScriptRanges.Time) is { } at ? new AtTime(Microseconds.Of(at)) : null;
        }

        long delay = group.Quantity("delay", ScriptRanges.Time) is { } wait ? Microseconds.Of(wait) : 0;
        int since = group.Single("since") is { } sinceNode ? StepNamed(sinceNode) ?? -2 : -1;
        if (group.Single("after") is not { } after || since == -2)
            return null;
        if (!after.Text.Contains(' '))
        {
            if (since >= 0)
                _problems.Add(after, "'since' belongs to a condition, and this is the name of a step", "delete 'since'");
            return StepNamed(after) is { } step ? new AfterStep(step, delay) : null;
        }

        if (_predicates?.Read(after) is not { } trigger)
            return null;
        if (trigger.IsDiscrete)
            return new AfterTrigger(trigger, since, delay);
        string moving = trigger.Comparisons.First(comparison => !comparison.Signal.IsDiscrete).Signal.Spoken;
        _problems.Add(after, $"a step cannot wait for '{moving}', which moves without steps", "wait for what the controller sees: a phase, an alarm, an output, a counter, a switch or an input");
        return null;
    }

    private int? StepNamed(ScalarNode node)
    {
        if (_names.TryGetValue(node.Text, out int index))
            return index;
        _problems.Add(node, $"no step is called '{ShortText.Of(node.Text)}'", _names.Count == 0 ? "give the step meant a 'name', or write a condition such as 'phase is dose'" : NearestName.Remedy(node.Text, _names.Keys));
        return null;
    }
}
