using System.Collections.Generic;

namespace LubeController.Files.Reading;

/// <summary>Gathers the problems of the files of one script, so that a person sees them all at once.</summary>
public sealed class ProblemList
{
    /// <summary>Most problems kept: after so many, the first ones are what matters.</summary>
    public const int Capacity = 50;

    private readonly List<Problem> _problems = [];
    private readonly HashSet<Problem> _known = [];

    /// <summary>Whether anything is wrong.</summary>
    public bool Any => _problems.Count > 0;

    /// <summary>Number of problems kept.</summary>
    public int Count => _problems.Count;

    /// <summary>The problems in the order in which they were found.</summary>
    public IReadOnlyList<Problem> All => _problems;

    /// <summary>Adds a problem, once: files that several scripts share are read for each of them.</summary>
    public void Add(Problem problem)
    {
        if (_problems.Count < Capacity && _known.Add(problem))
            _problems.Add(problem);
    }

    /// <summary>Adds a problem of a node.</summary>
    public void Add(YamlNode node, string message, string remedy) =>
        Add(new Problem(node.Place, node.Path, node.Shown, message, remedy));
}
