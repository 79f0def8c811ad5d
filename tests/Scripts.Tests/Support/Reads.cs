using System;
using System.IO;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Support;

/// <summary>Reads sample files, insisting that they are accepted or that they are refused.</summary>
public static class Reads
{
    public static string Data(string name) => Path.Combine(AppContext.BaseDirectory, "Data", name);

    public static BenchScript Script(string path, IScriptBench? bench = null)
    {
        var problems = new ProblemList();
        BenchScript? script = new ScriptReader(bench ?? SampleBench.Make(), RestRules.All).Read(path, problems);
        Assert.Equal("", string.Join('\n', problems.All.Select(problem => problem.ToString())));
        return script!;
    }

    public static Problem Refusal(Func<ProblemList, object?> read)
    {
        var problems = new ProblemList();
        Assert.Null(read(problems));
        return Assert.Single(problems.All);
    }
}
