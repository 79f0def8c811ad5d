using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Emulator;
using LubeController.Files.Reading;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Plots;

/// <summary>The trace of a dose's run, and the time at which the dose begins in it.</summary>
/// <param name="Trace">All that was recorded.</param>
/// <param name="StartUs">When the pump's output came on, us since the start of the run.</param>
internal readonly record struct Run(Trace Trace, long StartUs)
{
    private static readonly Dictionary<string, Trace> Known = new(StringComparer.Ordinal);

    /// <summary>Runs a dose's script, once however often it is asked for.</summary>
    public static Run Of(Dose dose)
    {
        if (!Known.TryGetValue(dose.Script, out Trace? trace))
            Known.Add(dose.Script, trace = new EmulatedBench().Run(Read(dose.Script)).Trace);
        Signal pump = trace.Find("output.pump")!;
        long[] starts = [.. Enumerable.Range(0, pump.Count).Where(point => pump.Value(point) == 1).Select(pump.TimeUs)];
        return new Run(trace, starts[dose.Number < 0 ? starts.Length + dose.Number : dose.Number]);
    }

    /// <summary>A signal's points around the dose, x in s since the pump started.</summary>
    public List<ScottPlot.Coordinates> Around(string signal, double beforeS, double afterS, double within) =>
        Curve.Of(Trace.Find(signal)!, StartUs - (long)(beforeS * 1e6), StartUs + (long)(afterS * 1e6), StartUs, within);

    private static BenchScript Read(string script)
    {
        var problems = new ProblemList();
        return new ScriptReader(new EmulatedBench(), RestRules.All).Read(script, problems)
            ?? throw new InvalidDataException(string.Join(Environment.NewLine, problems.All));
    }
}
