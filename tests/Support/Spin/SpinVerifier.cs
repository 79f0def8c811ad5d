using System;
using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Text.RegularExpressions;
using System.Threading.Tasks;

namespace LubeController.Tests.Support.Spin;

/// <summary>
/// The general model checker spin (Debian) with a C compiler, as a second opinion on what can be reached. Tests ask
/// <see cref="ExternalTool.Spin"/> and <see cref="ExternalTool.CCompiler"/> first; where one is missing, whoever asks here fails.
/// </summary>
public sealed partial class SpinVerifier : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("spin-").FullName;

    /// <summary>Makes and compiles the verifier of the phase machine.</summary>
    /// <param name="model">The Promela file.</param>
    /// <param name="size">Its size.</param>
    /// <exception cref="InvalidOperationException">spin or gcc is not installed, or refused the model.</exception>
    public SpinVerifier(string model, PhaseMachineSize size)
    {
        string copy = Path.Combine(_folder, Path.GetFileName(model));
        File.Copy(model, copy);
        Run("spin", $"-DREST={size.Rest}", $"-DWAIT={size.Wait}", $"-DOVERDUE={size.Overdue}", $"-DDOSES={size.Doses}", "-a", copy);
        // No partial-order reduction: there is one process, and every state is to be seen.
        Run("gcc", "-O2", "-w", "-DSAFETY", "-DNOREDUCE", "-o", "pan", "pan.c");
    }

    /// <summary>Searches everything.</summary>
    /// <returns>States and transitions.</returns>
    /// <exception cref="InvalidOperationException">It found an error, or its depth was not enough.</exception>
    public (long States, long Transitions) Search()
    {
        string said = Run(Path.Combine(_folder, "pan"), "-m2000000", "-w24");
        if (!said.Contains("errors: 0", StringComparison.Ordinal) || said.Contains("max search depth too small", StringComparison.Ordinal))
            throw new InvalidOperationException("spin did not complete its search:\n" + said);

        // Its transitions are the states stored and matched: the first state is among them, to which no transition leads.
        return (Number(States().Match(said)), Number(Transitions().Match(said)) - 1);
    }

    /// <summary>Deletes what was made.</summary>
    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static long Number(Match match) => long.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(\d+) states, stored")]
    private static partial Regex States();

    [GeneratedRegex(@"(\d+) transitions")]
    private static partial Regex Transitions();

    private string Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = _folder, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0)
                throw new InvalidOperationException($"{program} ended with {process.ExitCode}:\n{output}{errors.Result}");
            return output;
        }
        catch (Win32Exception missing)
        {
            throw new InvalidOperationException($"{program} was not found: apt-get install {ExternalTool.Spin.Packages} {ExternalTool.CCompiler.Packages}", missing);
        }
    }
}
