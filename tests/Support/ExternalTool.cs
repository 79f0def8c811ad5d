using System;
using System.IO;
using System.Linq;

namespace LubeController.Tests.Support;

/// <summary>
/// A program that some tests need, most for a second opinion. A test whose tool is not there is skipped with <see cref="Reason"/>;
/// <c>tests/run</c> installs them, and <c>.ci/run</c> takes no skip that is not listed in <c>tests/expected-skips.txt</c>.
/// </summary>
/// <param name="Name">Its command.</param>
/// <param name="Packages">The Debian packages that bring it.</param>
public sealed record ExternalTool(string Name, string Packages)
{
    /// <summary>The general circuit simulator.</summary>
    public static readonly ExternalTool NgSpice = new("ngspice", "ngspice");

    /// <summary>The general model checker.</summary>
    public static readonly ExternalTool Spin = new("spin", "spin");

    /// <summary>The C compiler that spin's verifier needs.</summary>
    public static readonly ExternalTool CCompiler = new("gcc", "gcc libc6-dev");

    /// <summary>The shell of the scripts that run the tests.</summary>
    public static readonly ExternalTool Bash = new("bash", "bash");

    /// <summary>Whether a folder of PATH holds it.</summary>
    public bool IsInstalled => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Any(folder => File.Exists(Path.Combine(folder, Name)) || File.Exists(Path.Combine(folder, Name + ".exe")));

    /// <summary>What a skipped test says.</summary>
    public string Reason => $"needs {Name}: apt-get install {Packages}";
}
