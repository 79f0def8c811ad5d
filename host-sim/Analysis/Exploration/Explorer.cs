using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// Breadth-first search of everything that a model can reach, level by level, all workers on one level at a time. So the way
/// to a violation is a shortest one, and of the shortest ones always the same.
/// </summary>
public sealed class Explorer
{
    private const int Portion = 64;

    private readonly ExplorationBounds _bounds;
    private readonly Action<ExplorationLevel>? _progress;
    private readonly FingerprintTable _known = new();
    private readonly ExplorationWorker[] _workers;
    private readonly List<int> _parents = [];
    private readonly List<ushort> _letters = [];
    private bool _stopped;

    /// <summary>Makes a search.</summary>
    /// <param name="makeModel">Makes the model of one worker.</param>
    /// <param name="bounds">How far it may go.</param>
    /// <param name="progress">Hears each level; null where nobody listens.</param>
    public Explorer(Func<IExploredModel> makeModel, ExplorationBounds bounds, Action<ExplorationLevel>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(makeModel);
        ArgumentNullException.ThrowIfNull(bounds);
        ArgumentOutOfRangeException.ThrowIfLessThan(bounds.MostStates, 1, nameof(bounds));
        ArgumentOutOfRangeException.ThrowIfLessThan(bounds.Workers, 1, nameof(bounds));
        _bounds = bounds;
        _progress = progress;
        _workers = [.. Enumerable.Range(0, bounds.Workers).Select(_ => new ExplorationWorker(makeModel(), _known))];
    }

    /// <summary>Searches to the end, to a violation, or to a bound.</summary>
    /// <exception cref="OperationCanceledException">The search was given up.</exception>
    public ExplorationResult Run(CancellationToken cancel)
    {
        var first = new byte[_workers[0].Model.StateLength];
        _workers[0].Model.WriteFirst(first);
        _workers[0].Enter(-1, 0, 0);
        int depth = 0;
        long bytes = 0;
        FoundState[] frontier = Gather();
        while (true)
        {
            bytes = Math.Max(bytes, Bytes);
            if (_workers.Any(worker => worker.Violation != null || worker.Probed.Count > 0))
                return Violated(depth, bytes);
            if (frontier.Length == 0)
                return Result(ExplorationOutcome.Complete, depth == 0 ? 0 : depth - 1, bytes);
            if (_stopped || _parents.Count > _bounds.MostStates)
                return Result(ExplorationOutcome.TooManyStates, depth, bytes);
            if (bytes > _bounds.MostBytes)
                return Result(ExplorationOutcome.TooMuchMemory, depth, bytes);
            depth++;
            Expand(frontier, depth, cancel);
            frontier = Gather();
            _progress?.Invoke(new ExplorationLevel(depth, _parents.Count, Transitions, frontier.Length));
        }
    }

    private long Transitions => _workers.Sum(worker => worker.Transitions);

    private long Bytes => _known.Bytes + _workers.Sum(worker => worker.Bytes) + ((long)_parents.Capacity * 6);

    private void Expand(FoundState[] frontier, int level, CancellationToken cancel)
    {
        int first = _parents.Count - frontier.Length;
        int next = 0;
        int room = _bounds.MostStates - _parents.Count;
        void Work(ExplorationWorker worker)
        {
            while (!cancel.IsCancellationRequested && !_stopped)
            {
                int from = Interlocked.Add(ref next, Portion) - Portion;
                if (from >= frontier.Length)
                    return;
                for (int index = from; index < Math.Min(from + Portion, frontier.Length); index++)
                    worker.Expand(_workers[frontier[index].Worker].Present(frontier[index].Index), first + index, level);
                if (worker.Found.Count > room)
                    _stopped = true;
            }
        }

        if (_workers.Length == 1)
            Work(_workers[0]);
        else
            Parallel.ForEach(_workers, new ParallelOptions { MaxDegreeOfParallelism = _workers.Length }, Work);
        cancel.ThrowIfCancellationRequested();
    }

    /// <summary>Numbers the states found on a level by the step that led to them, so that their order hangs on no worker.</summary>
    private FoundState[] Gather()
    {
        int count = _workers.Sum(worker => worker.Found.Count);
        var steps = new long[count];
        var places = new FoundState[count];
        int at = 0;
        for (int worker = 0; worker < _workers.Length; worker++)
        {
            List<UInt128> found = _workers[worker].Found;
            for (int index = 0; index < found.Count; index++)
            {
                (int parent, int letter) = _known.Find(found[index]);
                steps[at] = ((long)parent << 16) | (uint)letter;
                places[at++] = new FoundState(worker, index);
            }
        }

        Array.Sort(steps, places);
        foreach (long step in steps)
        {
            _parents.Add((int)(step >> 16));
            _letters.Add((ushort)(step & 0xFFFF));
        }

        foreach (ExplorationWorker worker in _workers)
            worker.Turn();
        return places;
    }

    private ExplorationResult Violated(int depth, long bytes)
    {
        Seen seen = default;
        bool any = false;
        foreach (Seen one in Violations())
        {
            if (any && !one.IsBefore(seen))
                continue;
            seen = one;
            any = true;
        }

        var way = new List<int>();
        if (seen.Parent >= 0)
            way.Add(seen.Letter);
        for (int state = seen.Parent; state > 0; state = _parents[state])
            way.Add(_letters[state]);
        way.Reverse();
        return new ExplorationResult(ExplorationOutcome.Violated, _parents.Count, Transitions, depth, seen.Property, seen.InProbe, way, bytes);
    }

    private IEnumerable<Seen> Violations()
    {
        foreach (ExplorationWorker worker in _workers)
        {
            if (worker.Violation is { } seen)
                yield return seen;
            foreach ((UInt128 fingerprint, int property) in worker.Probed)
            {
                (int parent, int letter) = _known.Find(fingerprint);
                yield return new Seen(parent, letter, property, true);
            }
        }
    }

    private ExplorationResult Result(ExplorationOutcome outcome, int depth, long bytes) =>
        new(outcome, _parents.Count, Transitions, depth, -1, false, [], bytes);

    private readonly record struct FoundState(int Worker, int Index);
}
