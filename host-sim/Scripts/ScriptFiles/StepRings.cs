using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Steps that wait for each other in a ring, so that none of them ever comes.</summary>
internal static class StepRings
{
    /// <summary>Adds a problem for each ring, naming it.</summary>
    public static void Refuse(IReadOnlyList<Step> steps, IReadOnlyList<MapReader> groups, ProblemList problems)
    {
        var judged = new HashSet<int>();
        foreach (Step first in steps)
        {
            var chain = new List<int>();
            for (int at = first.Index; at >= 0 && !judged.Contains(at); at = Before(steps[at]))
            {
                int seen = chain.IndexOf(at);
                if (seen >= 0)
                {
                    Tell(steps, groups, chain.Skip(seen).Append(at).Reverse().ToList(), problems);
                    break;
                }

                chain.Add(at);
            }

            judged.UnionWith(chain);
        }
    }

    private static int Before(Step step) => step.Time switch
    {
        AfterStep after => after.Step,
        AfterTrigger trigger => trigger.SinceStep,
        _ => -1,
    };

    private static void Tell(IReadOnlyList<Step> steps, IReadOnlyList<MapReader> groups, List<int> ring, ProblemList problems)
    {
        Step last = steps[ring[^1]];
        string names = string.Join(" -> ", ring.Select(index => steps[index].Label));
        YamlNode node = groups[last.Index].Map[last.Time is AfterStep ? "after" : "since"]!;
        problems.Add(node, ring.Count == 2 ? $"the step waits for itself: {names}" : $"the steps wait for each other in a ring: {names}", "let one of them begin 'at' a time");
    }
}
