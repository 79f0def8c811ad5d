using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// The way to a violation, gone once more: what a script must do at which time, and what the core shows at the end. A letter's
/// inputs are set half a scan period before its scan, power is cut a quarter of one after it. Where a step is longer than a board
/// may take between two scans, more scans lie in it, which change nothing.
/// </summary>
internal sealed class ViolationPath
{
    private readonly CoreSetup _setup;
    private readonly HandSteps _steps = new();
    private readonly CutSteps _cuts;
    private string _snapshot = "";
    private int _doses;
    private int _savedStanding;
    private int _silentMs;
    private int _roundMs;
    private long _pressMs = -1;

    private ViolationPath(CoreSetup setup)
    {
        _setup = setup;
        PeriodMs = PeriodOf(setup.StepMs);
        _cuts = new CutSteps(_steps, setup.StepMs, PeriodMs);
    }

    /// <summary>Scan period of the script, milliseconds: the step, or the longest even part of it that a script may have.</summary>
    public int PeriodMs { get; }

    /// <summary>Steps of the script, each as the inside of a YAML group.</summary>
    public IReadOnlyList<string> Steps => _steps.Lines;

    /// <summary>Time of the scan that shows the violation.</summary>
    public long EndMs { get; private set; }

    /// <summary>Goes the way.</summary>
    /// <param name="setup">The core.</param>
    /// <param name="letters">The letters.</param>
    /// <param name="probed">The property that a probe after them violates, or -1.</param>
    public static ViolationPath Follow(CoreSetup setup, IReadOnlyList<Letter> letters, int probed)
    {
        var path = new ViolationPath(setup);
        path._steps.HoldEverything(setup, letters.Count > 0 ? letters[0].Inputs : setup.Alphabet.Quiet);
        var model = new CoreModel(setup);
        var state = new byte[model.StateLength];
        model.WriteFirst(state);
        for (int index = 0; index < letters.Count; index++)
        {
            path.EndMs = path._cuts.TimeOf(index);
            path.Show(letters[index], index);
            int letter = setup.Alphabet.Letters.ToList().IndexOf(letters[index]);
            model.Move(state, letter);
            path.Note(model);
            model.Write(state);
        }

        if (probed >= 0)
            path.Probe(model, (CoreProperty)probed, letters.Count);
        return path;
    }

    /// <summary>What the script demands: names and demands.</summary>
    public IEnumerable<(string Name, string Demand)> Expectations(CoreProperty property)
    {
        switch (property)
        {
            case CoreProperty.StallIsAlarmed:
                yield return ("the silence is alarmed", $"eventually: alarm divider-stalled is on or alarm cycle-switch-fault is on\nfrom: {Since(property)} ms\nwithin: {EndMs - Since(property)} ms");
                break;
            case CoreProperty.DoseComesRound:
                yield return ("another dose is completed", $"eventually: counter doses >= {_doses + 1}\nfrom: {Since(property)} ms\nwithin: {EndMs - Since(property)} ms");
                break;
            case CoreProperty.CauseIsAlarmed:
                yield return ("its alarm is raised", NeverAtTheEnd);
                break;
            case CoreProperty.AlarmSurvivesCut:
                foreach (string alarm in CoreWords.AlarmsOf(_savedStanding))
                    yield return ($"{alarm} stands after the cut", $"eventually: alarm {alarm} is on\nfrom: {EndMs + (PeriodMs / 2)} ms");
                break;
            case CoreProperty.ResetLeavesFailed or CoreProperty.StartLeavesStopped:
                yield return ("the press leads out of the phase", $"eventually: phase is not {(property == CoreProperty.ResetLeavesFailed ? "failed" : "stopped")}\nfrom: {_pressMs} ms");
                break;
            default:
                yield return ("this never comes about", NeverAtTheEnd);
                break;
        }
    }

    private static int PeriodOf(int stepMs)
    {
        int parts = 1;
        while (stepMs / parts > ScriptReader.LongestScanPeriodMs || stepMs % parts != 0)
            parts++;
        return stepMs / parts;
    }

    private string NeverAtTheEnd => $"never: {_snapshot}\nfrom: {EndMs} ms\nto: {EndMs + (PeriodMs / 8)} ms";

    private long Since(CoreProperty property) => Math.Max(0, EndMs - (property == CoreProperty.StallIsAlarmed ? _silentMs : _roundMs));

    private void Show(Letter letter, int index)
    {
        long at = Math.Max(0, _cuts.TimeOf(index) - (PeriodMs / 2));
        _steps.Show(at, letter.Inputs);
        _steps.Hold(at, letter.Button);
        _cuts.Cut(letter.Cut, index);
    }

    private void Probe(CoreModel model, CoreProperty property, int letters)
    {
        bool reset = property == CoreProperty.ResetLeavesFailed;
        int quiet = reset ? model.QuietSteps : ButtonProbe.SettleSteps;
        Show(new Letter(_setup.Alphabet.Quiet, [], null, PowerCut.None), letters);
        int press = letters + quiet;
        _pressMs = _cuts.TimeOf(press) - (PeriodMs / 2);
        _steps.Hold(_pressMs, reset ? Button.Reset : Button.Start);
        EndMs = _cuts.TimeOf(press + 2);
    }

    private void Note(CoreModel model)
    {
        Controller core = model.Core;
        _doses = core.DosesCompleted;
        _savedStanding = model.SavedStanding;
        _silentMs = model.Monitors.LastedMs(CoreProperty.StallIsAlarmed);
        _roundMs = model.Monitors.LastedMs(CoreProperty.DoseComesRound);
        Outputs outputs = model.Outputs;
        string alarms = string.Concat(CoreWords.AlarmsOf(core.Alarms.Standing).Select(name => $" and alarm {name} is on"));
        _snapshot = $"phase is {CoreWords.Phases[core.Phase]} and output pump is {HandSteps.OnOff(outputs.Pump)} and output healthy-relay is {HandSteps.OnOff(outputs.HealthyRelay)}"
            + $" and output warning is {HandSteps.OnOff(outputs.Warning)} and output lamp is {HandSteps.OnOff(outputs.Lamp)}{alarms}"
            + string.Concat(CoreWords.AlarmsOf(~core.Alarms.Standing).Select(name => $" and alarm {name} is off"));
    }
}
