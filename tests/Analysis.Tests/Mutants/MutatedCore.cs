using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Tests.Support;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Emit;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>
/// Builds copies of the core with the compiler's own library, from the same sources and against the same library of the
/// microcontroller as the deployed one.
/// </summary>
internal sealed class MutatedCore
{
    private const string Name = "LubeController.Core";

    private readonly Dictionary<string, string> _sources;
    private readonly MetadataReference _library = MetadataReference.CreateFromFile(Path.Combine(AppContext.BaseDirectory, "microcontroller", "mscorlib.dll"));

    public MutatedCore()
    {
        string folder = Path.Combine(Repository.Root, "firmware", Name);
        _sources = Directory.GetFiles(folder, "*.cs").ToDictionary(path => Path.GetFileName(path), path => File.ReadAllText(path).ReplaceLineEndings("\n"), StringComparer.Ordinal);
    }

    /// <summary>How often what a mutant changes stands in its file: it must be once.</summary>
    public int Places(Mutant mutant) => _sources[mutant.File].Split(mutant.From).Length - 1;

    /// <summary>The assembly of a mutant, or of the core as it is.</summary>
    /// <exception cref="InvalidOperationException">It does not compile.</exception>
    public byte[] Build(Mutant? mutant)
    {
        var options = new CSharpParseOptions(LanguageVersion.CSharp14);
        IEnumerable<SyntaxTree> trees = _sources.Select(source => CSharpSyntaxTree.ParseText(
            mutant?.File == source.Key ? source.Value.Replace(mutant.From, mutant.To, StringComparison.Ordinal) : source.Value, options, source.Key));
        CSharpCompilation compilation = CSharpCompilation.Create(
            Name,
            trees,
            [_library],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable));
        using var assembly = new MemoryStream();
        EmitResult result = compilation.Emit(assembly);
        if (!result.Success)
            throw new InvalidOperationException($"'{mutant?.Name}' does not compile: {string.Join(Environment.NewLine, result.Diagnostics.Where(one => one.Severity == DiagnosticSeverity.Error))}");
        return assembly.ToArray();
    }
}
