using System;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>Makes a Stateless machine of a transition table: nothing is in the machine that is not in the table.</summary>
internal static class TableMachine
{
    /// <summary>Builds the machine.</summary>
    /// <param name="table">The table to be obeyed.</param>
    /// <param name="get">Reads the state, which is kept outside so that it can be saved and compared.</param>
    /// <param name="set">Writes it.</param>
    /// <param name="holds">Whether a condition holds now.</param>
    /// <param name="words">A condition's words, empty for none.</param>
    /// <param name="refuse">Called when a press is refused.</param>
    internal static StateMachine<TState, TEvent> Build<TState, TEvent, TGuard>(
        TransitionTable<TState, TEvent, TGuard> table, Func<TState> get, Action<TState> set,
        Func<TGuard, bool> holds, Func<TGuard, string> words, Action<TEvent> refuse)
        where TState : struct, Enum
        where TEvent : struct, Enum
        where TGuard : struct, Enum
    {
        var machine = new StateMachine<TState, TEvent>(get, set, FiringMode.Immediate);

        // An empty cell is "nothing changes", and so is a condition that does not hold where no other branch is named.
        machine.OnUnhandledTrigger((_, _) => { });
        for (int column = 0; column < table.States.Count; column++)
        {
            StateMachine<TState, TEvent>.StateConfiguration state = machine.Configure(table.States[column]);
            for (int row = 0; row < table.Events.Count; row++)
            {
                foreach (Branch<TState, TGuard> branch in table.Cell(row, column))
                    Add(state, table.Events[row], branch, holds, words, refuse);
            }
        }

        return machine;
    }

    private static void Add<TState, TEvent, TGuard>(
        StateMachine<TState, TEvent>.StateConfiguration state, TEvent happening, Branch<TState, TGuard> branch,
        Func<TGuard, bool> holds, Func<TGuard, string> words, Action<TEvent> refuse)
        where TState : struct, Enum
        where TEvent : struct, Enum
        where TGuard : struct, Enum
    {
        TGuard guard = branch.Guard;
        string text = words(guard);
        bool Holds() => holds(guard);
        if (branch.Target is not TState target)
            state.InternalTransitionIf(happening, _ => Holds(), () => refuse(happening), text);
        else if (target.Equals(state.State))
            state.PermitReentryIf(happening, Holds, text);
        else if (text.Length == 0)
            state.Permit(happening, target);
        else
            state.PermitIf(happening, target, Holds, text);
    }
}
