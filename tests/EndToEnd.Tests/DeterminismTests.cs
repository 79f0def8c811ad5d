using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>One seed, one trace: the same bytes on every run, in Debug and Release, on one and two threads, with and without vector instructions.</summary>
[Trait("Run", "Long")]
public sealed class DeterminismTests
{
    /// <summary>Every script that ships: shaft, rule, power cuts and whole days among them.</summary>
    private const string Scripts = "hil-scripts";

    private static readonly Lazy<IReadOnlyDictionary<string, byte[]>> Reference = new(() => Replay("Release", jobs: 2, setting: null));

    [Fact]
    public void A_second_run_writes_the_same_bytes() => SameAs(Replay("Release", jobs: 2, setting: null));

    [Fact]
    public void One_thread_and_two_write_the_same_bytes() => SameAs(Replay("Release", jobs: 1, setting: null));

    [Fact]
    public void Debug_and_Release_write_the_same_bytes() => SameAs(Replay("Debug", jobs: 2, setting: null));

    [Theory]
    [InlineData("DOTNET_EnableAVX2", "fma: no")]
    [InlineData("DOTNET_EnableHWIntrinsic", "avx2: no")]
    public void Without_vector_instructions_the_bytes_are_the_same(string setting, string shows)
    {
        // Where there are none, nothing would be switched off.
        string about = Run("Release", setting: null, "about");
        Assert.SkipUnless(about.Contains("avx2: yes", StringComparison.Ordinal) && about.Contains("fma: yes", StringComparison.Ordinal), "needs a processor with AVX2 and FMA");

        Assert.Contains(shows, Run("Release", setting, "about"), StringComparison.Ordinal);

        SameAs(Replay("Release", jobs: 2, setting));
    }

    private static void SameAs(IReadOnlyDictionary<string, byte[]> other)
    {
        Assert.Equal(Reference.Value.Keys, other.Keys);
        Assert.True(Reference.Value.Count >= 2 * Repository.Scripts("faults").Concat(Repository.Scripts("running")).Count(), "a CSV and a VCD of every script");
        foreach ((string name, byte[] bytes) in Reference.Value)
            Assert.True(bytes.AsSpan().SequenceEqual(other[name]), $"{name} differs");
    }

    private static SortedDictionary<string, byte[]> Replay(string configuration, int jobs, string? setting)
    {
        string folder = Directory.CreateTempSubdirectory("lubebench-").FullName;
        try
        {
            Run(configuration, setting, "replay", Scripts, "--jobs", jobs.ToString(System.Globalization.CultureInfo.InvariantCulture), "--trace", folder);
            var files = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
            foreach (string file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories))
                files.Add(Path.GetRelativePath(folder, file), File.ReadAllBytes(file));
            return files;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Run(string configuration, string? setting, params string[] arguments)
    {
        string program = Path.Combine(Repository.Root, "host-sim", "Cli", "bin", configuration, "net10.0", "lubebench.dll");
        Assert.True(File.Exists(program), $"{program} is missing: tests/run builds it");
        ProgramRun run = ProgramRun.Of([program, .. arguments], setting == null ? null : [new(setting, "0")], Repository.Root);
        Assert.True(run.ExitCode == 0, $"lubebench {string.Join(' ', arguments)} ended with {run.ExitCode}: {run.Output}{run.Errors}");
        return run.Output;
    }
}
