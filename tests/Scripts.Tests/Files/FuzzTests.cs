using System;
using System.IO;
using System.Linq;
using CsCheck;
using LubeController.Files.LubricantFiles;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Files;

/// <summary>Whatever happens to a file, reading it ends in a value or in problems with a place, never in an exception.</summary>
public sealed class FuzzTests
{
    private const int Draws = 600;

    private static readonly byte[][] Snippets = [.. new[] { "", "\t", "'", "\"", "[", "]", "{", "}", "- ", ": ", "&a ", "*a ", "!!x ", "\n", "  ", "0", "-1", "1e999", " bar", " s", "#", "...", "---", "%", "\0", "é", "null", "~" }.Select(System.Text.Encoding.UTF8.GetBytes), [0xFF], [0xC3], [0xE2, 0x82]];

    private static readonly Gen<(int Kind, int Length, int At, int With)[]> GenEdits = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 12], Gen.Int[0, 100_000], Gen.Int[0, Snippets.Length - 1]).Array[1, 4];

    [Theory]
    [InlineData("sample.yaml")]
    [InlineData("salt.plant.yaml")]
    [InlineData("invented-grease.lubricant.yaml")]
    [InlineData("invented-oil.lubricant.yaml")]
    [InlineData("plain.settings.yaml")]
    public void Reading_never_throws(string name)
    {
        byte[] sample = File.ReadAllBytes(Reads.Data(name));
        using var folder = new TempFolder();
        GenEdits.Sample(
            edits =>
            {
                byte[] bytes = edits.Aggregate(sample, Edit);
                string path = folder.Write("fuzzed" + name[name.IndexOf('.')..], bytes);
                var problems = new ProblemList();
                object? read = name.Contains(".plant") ? PlantReader.Read(path, problems)
                    : name.Contains(".lubricant") ? LubricantReader.Read(path, problems)
                    : name.Contains(".settings") ? SettingsReader.Read(path, RestRules.All, problems)
                    : new ScriptReader(SampleBench.Make(), RestRules.All).Read(path, problems);
                Assert.Equal(read == null, problems.Any);
                Assert.All(problems.All, problem => Assert.True(problem.Place.Line >= 1 && problem.Message.Length > 0 && problem.Remedy.Length > 0));
            },
            iter: Draws,
            threads: 1);
    }

    private static byte[] Edit(byte[] bytes, (int Kind, int Length, int At, int With) edit)
    {
        int at = edit.At % (bytes.Length + 1);
        int cut = edit.Kind == 0 ? 0 : Math.Min(edit.Length, bytes.Length - at);
        byte[] put = edit.Kind == 1 ? [] : Snippets[edit.With];
        return [.. bytes[..at], .. put, .. bytes[(at + cut)..]];
    }
}
