using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads what a script expects.</summary>
internal sealed class ExpectationReader(MapReader script, IReadOnlyDictionary<string, int> steps, PredicateReader? predicates)
{
    private const int MostExpectations = 1000;
    private const int MostInOrder = 100;

    private readonly ProblemList _problems = script.Problems;

    /// <summary>The expectations that could be read.</summary>
    public IReadOnlyList<Expectation> Read()
    {
        var expectations = new List<Expectation>();
        var names = new HashSet<string>();
        foreach (MapReader group in script.Groups("expect", ScriptKeys.Expectation, MostExpectations))
        {
            string name = group.Text("name") ?? "";
            if (!group.Has("name"))
                group.Missing("name", "say in a few words what is expected");
            else if (name.Length > 0 && !names.Add(name))
                _problems.Add(group.Map["name"]!, "two expectations have this name", "give each a name of its own");
            if (One(group) is { } expectation)
                expectations.Add(Framed(group, expectation, name));
        }

        return expectations;
    }

    private Expectation? One(MapReader group)
    {
        string? demand = group.ExactlyOne(ScriptKeys.Demands);
        if (demand == null)
            return null;
        RefuseStrangers(group, demand);
        switch (demand)
        {
            case "always" or "never":
                return Predicate(group.Single(demand)) is { } always ? new AlwaysExpectation(always, demand == "never") { Name = "", Place = default } : null;
            case "eventually":
                return Predicate(group.Single(demand)) is { } eventually ? new EventuallyExpectation(eventually) { Name = "", Place = default } : null;
            case "holds":
                return Holds(group);
            case "until":
                return Until(group);
            default:
                return InOrder(group);
        }
    }

    private Expectation Framed(MapReader group, Expectation expectation, string name)
    {
        MapNode map = group.Map;
        if (map.Find("within") is { } within && map.Find("to") != null)
            _problems.Add(new Problem(within.KeyPlace, group.Field("within"), within.Value.Shown, "'within' and 'to' both end the window", "keep one of them"));
        WindowEdge? from = Edge(group, "from");
        WindowEdge? to = Edge(group, "to");
        if (from is TimeEdge first && to is TimeEdge last && last.TimeUs < first.TimeUs)
            _problems.Add(map["to"]!, $"the window would end before it begins, at {from.Text}", "write a later time");
        return expectation with
        {
            Name = name,
            Place = map.Place,
            From = from,
            To = to,
            WithinUs = expectation.WithinUs ?? Time(group, "within"),
        };
    }

    private void RefuseStrangers(MapReader group, string demand)
    {
        Refuse("within", demand is "eventually" or "holds" or "in-order", demand == "until" ? "under 'until', beside 'hold' and 'until'" : "with eventually, holds and in-order; 'always' and 'never' take 'from' and 'to'");
        Refuse("for", demand == "holds", "with 'holds'");

        void Refuse(string key, bool fits, string where)
        {
            if (!fits && group.Map.Find(key) is { } entry)
                _problems.Add(new Problem(entry.KeyPlace, group.Field(key), entry.Value.Shown, $"'{key}' does not go with '{demand}'", $"it stands {where}"));
        }
    }

    private HoldsExpectation? Holds(MapReader group)
    {
        if (!group.Has("for"))
            group.Missing("for", "write for instance 'for: 10 s'");
        Predicate? predicate = Predicate(group.Single("holds"));
        long? time = Time(group, "for");
        return predicate == null || time == null ? null : new HoldsExpectation(predicate, time.Value) { Name = "", Place = default };
    }

    private UntilExpectation? Until(MapReader group)
    {
        if (group.Group("until", ScriptKeys.Until) is not { } until)
            return null;
        foreach (string key in (string[])["hold", "until"])
        {
            if (!until.Has(key))
                until.Missing(key, "write a condition such as 'phase is dose'");
        }

        Predicate? hold = Predicate(until.Single("hold"));
        Predicate? end = Predicate(until.Single("until"));
        long? within = Time(until, "within");
        if (within != null && group.Map.Find("to") is { } to)
            _problems.Add(new Problem(to.KeyPlace, group.Field("to"), to.Value.Shown, "'to' ends the window, as 'within' under 'until' does", "keep one of them"));
        return hold == null || end == null ? null : new UntilExpectation(hold, end) { Name = "", Place = default, WithinUs = within };
    }

    private InOrderExpectation? InOrder(MapReader group)
    {
        IReadOnlyList<YamlNode> items = group.List("in-order", MostInOrder);
        if (items.Count < 2 && group.Map["in-order"] is ListNode list)
            _problems.Add(list, "an order needs two conditions or more", "add one, or write 'eventually'");
        var order = new List<Predicate>();
        foreach (YamlNode item in items)
        {
            if (item is not ScalarNode single)
                _problems.Add(item, $"a condition is expected, but {item.Sort} stands here", "write for instance 'phase is dose'");
            else if (Predicate(single) is { } predicate)
                order.Add(predicate);
        }

        return order.Count == items.Count && order.Count >= 2 ? new InOrderExpectation(order) { Name = "", Place = default } : null;
    }

    private WindowEdge? Edge(MapReader group, string key)
    {
        if (group.Single(key) is not { } node)
            return null;
        if (char.IsAsciiDigit(node.Text[0]) || node.Text[0] is '+' or '-' or '.')
            return group.Quantity(key, ScriptRanges.Time) is { } time ? new TimeEdge(Microseconds.Of(time), node.Text) : null;
        if (node.Text.Contains(' '))
            return Predicate(node) is { } trigger ? new TriggerEdge(trigger, trigger.Text) : null;
        if (steps.TryGetValue(node.Text, out int step))
            return new StepEdge(step, node.Text);
        _problems.Add(node, $"neither a time nor a step: no step is called '{ShortText.Of(node.Text)}'", steps.Count == 0 ? "write a time such as '5 min', or a condition such as 'phase is dose'" : NearestName.Remedy(node.Text, steps.Keys.ToArray()));
        return null;
    }

    private Predicate? Predicate(ScalarNode? node) => node == null ? null : predicates?.Read(node);

    private static long? Time(MapReader group, string key) =>
        group.Quantity(key, ScriptRanges.Time) is { } time ? Microseconds.Of(time) : null;
}
