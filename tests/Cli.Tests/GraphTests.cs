using System;
using System.IO;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

/// <summary>A diagram is the same text in each process and each culture: nothing in it follows a hash or a language.</summary>
public sealed class GraphTests
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "lubebench.dll");

    public static TheoryData<string, string> Diagrams => new()
    {
        { "phases", "mermaid" },
        { "phases", "dot" },
        { "lifecycle", "mermaid" },
        { "lifecycle", "dot" },
    };

    [Theory]
    [MemberData(nameof(Diagrams))]
    public void A_diagram_is_the_same_text_in_another_process(string what, string format) =>
        Assert.Equal(new ProgramRun(0, Drawn(what, format), ""), ProgramRun.Of([Program, "graph", what, "--format", format]));

    /// <summary>Turkish has a dotted capital I of its own. The bench is built for the invariant culture; here it is given the machine's.</summary>
    [Theory]
    [MemberData(nameof(Diagrams))]
    public void A_diagram_is_the_same_text_in_another_culture(string what, string format)
    {
        using var folder = new TempFolder();
        string config = File.ReadAllText(Path.ChangeExtension(Program, ".runtimeconfig.json"));
        const string invariant = "\"System.Globalization.Invariant\": true";
        Assert.Contains(invariant, config, StringComparison.Ordinal);
        folder.Write("turkish.runtimeconfig.json", config.Replace(invariant, "\"System.Globalization.Invariant\": false", StringComparison.Ordinal));

        ProgramRun run = ProgramRun.Of(
            ["exec", "--runtimeconfig", Path.Combine(folder.Root, "turkish.runtimeconfig.json"), Program, "graph", what, "--format", format],
            [new("LC_ALL", "tr_TR.UTF-8")]);

        Assert.SkipWhen(run.Errors.Contains("valid ICU package", StringComparison.Ordinal), "needs ICU, the library of cultures: apt-get install libicu72 or later");
        Assert.Equal(new ProgramRun(0, Drawn(what, format), ""), run);
    }

    private static string Drawn(string what, string format)
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("graph", what, "--format", format));
        return session.Output;
    }
}
