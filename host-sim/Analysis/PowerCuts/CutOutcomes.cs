using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>What may come of a cut in one write.</summary>
internal sealed class CutOutcomes
{
    private readonly List<byte[]> _mayStart = [];

    public CutOutcomes(Promises old, Promises next, RestProbe probe)
    {
        Old = old;
        New = next;
        FaultWaits = old.FaultPending && next.FaultPending;
        OldStarted = probe.Started(old.State, old.FaultPending);
        int latched = Latched(probe.Core);
        OldDoses = probe.Core.DosesCompleted;
        _mayStart.Add(OldStarted);
        foreach ((byte[] state, bool fault) in new[] { (old.State, next.FaultPending), (next.State, old.FaultPending), (next.State, next.FaultPending) })
        {
            _mayStart.Add(probe.Started(state, fault));
            latched &= Latched(probe.Core);
            OldDoses = Math.Min(OldDoses, probe.Core.DosesCompleted);
        }

        AlwaysLatched = latched;
        NewestBlock = old.Log.Count == 0 ? -1 : old.Log.MaxBy(entry => entry.Key).Value.Block;
    }

    /// <summary>The block that holds the newest entry of the logbook; -1 where there is none.</summary>
    public int NewestBlock { get; }

    public Promises Old { get; }

    public Promises New { get; }

    /// <summary>Alarms latched in the old state and in the new one.</summary>
    public int AlwaysLatched { get; }

    public bool FaultWaits { get; }

    public int OldDoses { get; }

    public byte[] OldStarted { get; }

    public bool MayStartAs(byte[] state) => _mayStart.Exists(one => one.AsSpan().SequenceEqual(state));

    private static int Latched(Controller core)
    {
        int latched = 0;
        for (int index = 0; index < AlarmTable.Count; index++)
            latched |= core.Alarms.IsLatched((AlarmId)index) ? 1 << index : 0;
        return latched;
    }
}
