using System;
using System.Linq;
using System.Text;
using Stateless.Reflection;

namespace LubeController.Analysis.Specification;

/// <summary>
/// Draws a Stateless machine from what it says of itself. Stateless's own writers name triggers and guards by their code;
/// here they have the words of the tables, edges between the same two states are one, and the order is fixed. Refused
/// presses are not drawn, as nothing changes.
/// </summary>
internal sealed class StateGraph
{
    private readonly string _name;
    private readonly (string Id, string Label)[] _states;
    private readonly (string From, string To, string Label)[] _edges;
    private readonly string _initial;

    private StateGraph(string name, (string Id, string Label)[] states, (string From, string To, string Label)[] edges, string initial)
    {
        _name = name;
        _states = states;
        _edges = edges;
        _initial = initial;
    }

    internal static StateGraph FromMachine<TState, TEvent>(
        string name, StateMachineInfo machine, Func<TState, string> stateWords, Func<TEvent, string> eventWords)
        where TState : struct, Enum
        where TEvent : struct, Enum
    {
        StateInfo[] states = [.. machine.States.OrderBy(state => (TState)state.UnderlyingState)];
        var edges = states.SelectMany(state => state.FixedTransitions.Where(edge => !edge.IsInternalTransition)
            .GroupBy(edge => (TState)edge.DestinationState.UnderlyingState).OrderBy(group => group.Key)
            .Select(group => (
                From: state.UnderlyingState.ToString()!,
                To: group.Key.ToString(),
                Label: string.Join("\n", group.OrderBy(edge => (TEvent)edge.Trigger.UnderlyingTrigger)
                    .Select(edge => Label(edge, eventWords)).Distinct()))));
        return new StateGraph(
            name,
            [.. states.Select(state => (state.UnderlyingState.ToString()!, stateWords((TState)state.UnderlyingState)))],
            [.. edges],
            machine.InitialState.UnderlyingState.ToString()!);
    }

    /// <summary>Mermaid's state diagram, version 2.</summary>
    internal string Mermaid()
    {
        var text = new StringBuilder("stateDiagram-v2\n");
        foreach ((string id, string label) in _states)
            text.Append($"    state \"{label}\" as {id}\n");
        text.Append($"    [*] --> {_initial}\n");

        // A colon would end a label and a semicolon the statement.
        foreach ((string from, string to, string label) in _edges)
            text.Append($"    {from} --> {to} : {label.Replace(";", ",", StringComparison.Ordinal).Replace("\n", "<br>", StringComparison.Ordinal)}\n");
        return text.ToString();
    }

    /// <summary>A directed graph in the DOT language.</summary>
    internal string Dot()
    {
        var text = new StringBuilder($"digraph {_name} {{\n    rankdir=LR;\n    node [shape=box, style=rounded];\n");
        text.Append("    start [shape=point, label=\"\"];\n");
        foreach ((string id, string label) in _states)
            text.Append($"    {id} [label=\"{label}\"];\n");
        text.Append($"    start -> {_initial};\n");
        foreach ((string from, string to, string label) in _edges)
            text.Append($"    {from} -> {to} [label=\"{label.Replace("\n", "\\n", StringComparison.Ordinal)}\"];\n");
        return text.Append("}\n").ToString();
    }

    private static string Label<TEvent>(FixedTransitionInfo edge, Func<TEvent, string> eventWords)
    {
        string happening = eventWords((TEvent)edge.Trigger.UnderlyingTrigger);
        string guards = string.Join(", ", edge.GuardConditionsMethodDescriptions.Select(guard => guard.Description).Where(words => words.Length > 0));
        return guards.Length == 0 ? happening : $"{happening} [{guards}]";
    }
}
