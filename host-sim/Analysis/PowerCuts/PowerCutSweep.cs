using System;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace LubeController.Analysis.PowerCuts;

/// <summary>
/// Cuts the power at every byte of every write of a run, with each of the three things that may stand after the cut, starts the
/// board again, twice, and judges what is promised: settings old or new, state old or new, committed alarms, counts and rest,
/// boot record before pump, entries of the logbook, and that a cut raises no storage-corrupt.
/// </summary>
public static class PowerCutSweep
{
    /// <summary>Violations after which a run is broken off.</summary>
    public const int MostViolations = 10;

    /// <summary>Carries a sweep out. Its result does not depend on the number of jobs.</summary>
    public static PowerCutResult Run(PowerCutSetup setup, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentOutOfRangeException.ThrowIfLessThan(setup.Jobs, 1);
        SweepRun[] runs = [.. Enumerable.Range(0, setup.Jobs).Select(job => new SweepRun(setup, job, cancel))];
        Task.WaitAll([.. runs.Select(run => Task.Run(run.Run, cancel))], cancel);
        SweepRun longest = runs.MaxBy(run => run.Writes.Values.Sum())!;
        WriteKind[] kinds = Enum.GetValues<WriteKind>();
        return new PowerCutResult
        {
            Writes = longest.Writes,
            WritesCut = kinds.ToDictionary(kind => kind, kind => runs.Sum(run => run.WritesCut[kind])),
            Cuts = kinds.ToDictionary(kind => kind, kind => runs.Sum(run => run.Cuts[kind])),
            MostRestBackMs = runs.Max(run => run.MostRestBackMs),
            Doses = longest.Doses,
            Starts = longest.Starts,
            Violations = [.. runs.SelectMany(run => run.Violations).Distinct().OrderBy(one => one.Write).ThenBy(one => one.Byte).ThenBy(one => one.Rest)],
        };
    }
}
