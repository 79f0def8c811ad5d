using System.CommandLine;
using System.IO;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics.X86;

namespace LubeController.Cli.About;

/// <summary><c>lubebench about</c>: version and machine, for reports of a difference between two machines.</summary>
internal static class AboutCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Make(TextWriter output)
    {
        var command = new Command("about", "Tells version, runtime, processor and the vector instructions in use.");
        command.SetAction(_ =>
        {
            output.WriteLine($"lubebench {typeof(AboutCommand).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion}");
            output.WriteLine($"runtime: {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.RuntimeIdentifier}");
            output.WriteLine($"sse2: {YesNo(Sse2.IsSupported)}");
            output.WriteLine($"avx2: {YesNo(Avx2.IsSupported)}");
            output.WriteLine($"fma: {YesNo(Fma.IsSupported)}");
            return 0;
        });
        return command;
    }

    private static string YesNo(bool supported) => supported ? "yes" : "no";
}
