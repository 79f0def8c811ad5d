using System;
using System.IO;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;

namespace LubeController.Cli.Tests;

/// <summary>One use of the program, in this process, in a folder of its own with the sample plant and settings.</summary>
public sealed class Session : IDisposable
{
    public TempFolder Folder { get; } = new();

    public IScriptBench Bench { get; init; } = SampleBench.Make();

    public string Output { get; private set; } = "";

    public string Errors { get; private set; } = "";

    public string[] OutputLines => Lines(Output);

    public string[] ErrorLines => Lines(Errors);

    public string At(string name) => Folder.At(name);

    /// <summary>Writes a script over the sample plant.</summary>
    public string Script(string name, string expectations, string rest = "", string title = "a title") =>
        Folder.Write(name, $"script: {title}\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 100 s\n{rest}{(expectations.Length > 0 ? "expect:\n" + expectations : "")}");

    public int Run(params string[] arguments)
    {
        var output = new StringWriter { NewLine = "\n" };
        var errors = new StringWriter { NewLine = "\n" };
        int code = new Lubebench(Bench, output, errors, null).Run(arguments);
        Output = output.ToString();
        Errors = errors.ToString();
        return code;
    }

    public void Dispose() => Folder.Dispose();

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
