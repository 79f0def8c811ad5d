using System.IO;
using LubeController.Scripts.Replaying;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>Replays a script as the bench does.</summary>
internal static class Replays
{
    public static int ExitCode(string script, out string report)
    {
        var bench = new EmulatedBench();
        var session = new ReplaySession(new ScriptReader(bench, RestRules.All), new ScriptRunner(bench), new NoProgress());
        using var output = new StringWriter();
        int code = session.Run(new ReplayOptions { Paths = [script] }, output, output);
        report = output.ToString();
        return code;
    }
}
