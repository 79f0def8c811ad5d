using System.CommandLine;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics.X86;

namespace LubeController.Cli;

/// <summary><c>lubebench about</c>: version and machine, for reports of a difference between two machines.</summary>
internal static class AboutCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var command = new Command("about", "Tells version, runtime, processor and the vector instructions in use.");
        command.Does(_ =>
        {
            host.Output.WriteLine($"lubebench {typeof(AboutCommand).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion}");
            host.Output.WriteLine($"runtime: {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.RuntimeIdentifier}");
            host.Output.WriteLine($"sse2: {YesNo(Sse2.IsSupported)}");
            host.Output.WriteLine($"avx2: {YesNo(Avx2.IsSupported)}");
            host.Output.WriteLine($"fma: {YesNo(Fma.IsSupported)}");
            return ExitCode.Done;
        });
        return command;
    }

    private static string YesNo(bool supported) => supported ? "yes" : "no";
}
