using System.Collections.Generic;
using System.Diagnostics;
using System.Threading.Tasks;

namespace LubeController.Tests.Support;

/// <summary>A .NET program that ran in a process of its own to its end.</summary>
/// <param name="ExitCode">What it ended with.</param>
/// <param name="Output">All that it printed, with line feeds.</param>
/// <param name="Errors">All its errors, with line feeds.</param>
public sealed record ProgramRun(int ExitCode, string Output, string Errors)
{
    /// <summary>Runs <c>dotnet</c>.</summary>
    /// <param name="arguments">The program and its arguments.</param>
    /// <param name="environment">Variables set for it alone.</param>
    /// <param name="folder">Where it runs; the current folder if not given.</param>
    public static ProgramRun Of(IEnumerable<string> arguments, IEnumerable<KeyValuePair<string, string>>? environment = null, string? folder = null)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = folder ?? "", RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in environment ?? [])
            start.Environment[name] = value;
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new ProgramRun(process.ExitCode, output.ReplaceLineEndings("\n"), errors.Result.ReplaceLineEndings("\n"));
    }
}
