using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>One seed, one trace: the same bytes on every run, in Debug and Release, on one and two threads, with and without vector instructions.</summary>
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
        Assert.Contains(shows, Run("Release", setting, "about"), StringComparison.Ordinal);

        SameAs(Replay("Release", jobs: 2, setting));
    }

    /// <summary>Without this the theory above would prove nothing on a machine that has no such instructions.</summary>
    [Fact]
    public void This_machine_has_the_instructions_that_are_switched_off()
    {
        string about = Run("Release", setting: null, "about");

        Assert.Contains("avx2: yes", about, StringComparison.Ordinal);
        Assert.Contains("fma: yes", about, StringComparison.Ordinal);
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
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = Repository.Root, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(program);
        foreach (string argument in arguments)
            start.ArgumentList.Add(argument);
        if (setting != null)
            start.Environment[setting] = "0";
        using Process process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"lubebench {string.Join(' ', arguments)} ended with {process.ExitCode}: {output}{errors.Result}");
        return output;
    }
}
