using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>Replays a script as the bench does.</summary>
internal static class Replays
{
    public static ScriptVerdict Verdict(string script, out string report)
    {
        (ScriptVerdict verdict, RunResult result) = new ScriptRunner(new EmulatedBench()).Run(Repository.Read(script));
        report = string.Join('\n', VerdictText.Of(verdict, result, true, null));
        return verdict;
    }
}
