using System;
using System.IO;
using LubeController.Files.Reading;
using Xunit;

namespace LubeController.Files.Tests.Support;

/// <summary>The sample files, and reading that must be refused.</summary>
public static class Reads
{
    public static string Data(string name) => Path.Combine(AppContext.BaseDirectory, "Data", name);

    public static Problem Refusal(Func<ProblemList, object?> read)
    {
        var problems = new ProblemList();
        Assert.Null(read(problems));
        return Assert.Single(problems.All);
    }
}
