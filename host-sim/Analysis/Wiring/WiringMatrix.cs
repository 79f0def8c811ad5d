using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>
/// Every alarm under every single fault of a wiring: what the supervisor sees, and what would make visible what nobody can
/// detect. Depends on nothing but the wiring and the alarms.
/// </summary>
/// <param name="Conditions">The alarms.</param>
/// <param name="Faults">The single faults.</param>
/// <param name="Rows">Sound wiring and each fault for each alarm; what nobody can detect first, else by alarm and fault.</param>
public sealed record WiringMatrix(IReadOnlyList<WiringCondition> Conditions, IReadOnlyList<WiringFaultCase> Faults, IReadOnlyList<WiringRow> Rows)
{
    /// <summary>What is wrong with the wiring though no part of it has a fault; empty where nothing is.</summary>
    public IReadOnlyList<string> Wrongs { get; private init; } = [];

    /// <summary>Whether the wiring has a heartbeat contact.</summary>
    public bool HasHeartbeat { get; private init; }

    /// <summary>What would show a fault in health, in words that fit this wiring.</summary>
    public string MeasureWords(WiringRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return WiringOutcomes.Words(row.MadeVisibleBy, HasHeartbeat);
    }

    /// <summary>Works it out.</summary>
    /// <param name="wiring">The wiring.</param>
    /// <param name="conditions">The alarms, usually <see cref="WiringCondition.All"/>.</param>
    public static WiringMatrix Of(SupervisoryWiringDescription wiring, IReadOnlyList<WiringCondition> conditions)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        ArgumentNullException.ThrowIfNull(conditions);
        IReadOnlyList<WiringFaultCase> faults = WiringFaultCase.Of(wiring);
        // Alarms that drive the outputs alike look alike, so each pattern is worked out once.
        var known = new Dictionary<OutputPattern, List<WiringRow>>();
        var rows = new List<WiringRow>();
        foreach (WiringCondition condition in conditions)
        {
            if (!known.TryGetValue(condition.Pattern, out List<WiringRow>? alike))
            {
                alike = RowsOf(wiring, condition, faults);
                known.Add(condition.Pattern, alike);
            }

            rows.AddRange(alike.Select(row => row with { Condition = condition }));
        }

        return new WiringMatrix(conditions, faults, [.. rows.OrderBy(row => row.Outcome)])
        {
            Wrongs = WiringWrongs.Of(wiring, conditions),
            HasHeartbeat = wiring.Contacts.Any(contact => contact.Output == WiringOutputs.Heartbeat),
        };
    }

    private static List<WiringRow> RowsOf(SupervisoryWiringDescription wiring, WiringCondition condition, IReadOnlyList<WiringFaultCase> faults)
    {
        OutputPattern health = OutputPattern.Health;
        var probe = new WiringProbe(wiring, health, condition.Pattern);
        (WiringPicture soundHealth, WiringPicture soundAlarm) = probe.Look(null);
        bool told = soundAlarm.DiffersFrom(soundHealth);
        WiringOutcome sound = told ? WiringOutcome.Told : WiringOutcome.NeverTold;
        var rows = new List<WiringRow> { new(condition, null, soundHealth, soundAlarm, sound, WiringMeasures.None) };
        var variants = new WiringVariants(wiring, health, condition.Pattern);
        (WiringMeasures Measure, WiringProbe Probe)[] measures = [.. variants.All()];
        foreach (WiringFaultCase fault in faults)
        {
            (WiringPicture inHealth, WiringPicture inAlarm) = probe.Look(fault);
            WiringOutcome outcome = !told ? WiringOutcome.NeverTold : Judge(soundHealth, soundAlarm, inHealth, inAlarm);
            WiringMeasures visible = WiringOutcomes.IsUnseen(outcome) ? VisibleBy(measures, fault) : WiringMeasures.None;
            rows.Add(new WiringRow(condition, fault, inHealth, inAlarm, outcome, visible));
        }

        return rows;
    }

    private static WiringOutcome Judge(WiringPicture soundHealth, WiringPicture soundAlarm, WiringPicture inHealth, WiringPicture inAlarm)
    {
        bool alarmShows = inAlarm.DiffersFrom(inHealth);
        if (inHealth.DiffersFrom(soundHealth))
            return alarmShows ? WiringOutcome.FaultSeenAlarmTold : WiringOutcome.FaultSeenAlarmHidden;
        if (!alarmShows)
            return inHealth.IsCertainly(soundHealth) && inAlarm.IsCertainly(inHealth) ? WiringOutcome.LostUnseen : WiringOutcome.MayBeLost;
        return inAlarm.DiffersFrom(soundAlarm) ? WiringOutcome.ToldOtherwise : WiringOutcome.ToldFaultUnseen;
    }

    private static WiringMeasures VisibleBy((WiringMeasures Measure, WiringProbe Probe)[] measures, WiringFaultCase fault)
    {
        WiringMeasures visible = WiringMeasures.None;
        foreach ((WiringMeasures measure, WiringProbe probe) in measures)
        {
            if ((visible & measure) == 0 && Shows(probe, fault))
                visible |= measure;
        }

        return visible;
    }

    // The measure must tell the alarm on sound wiring, and the fault in health.
    private static bool Shows(WiringProbe probe, WiringFaultCase fault)
    {
        (WiringPicture soundHealth, WiringPicture soundAlarm) = probe.Look(null);
        return soundAlarm.DiffersFrom(soundHealth) && probe.Look(fault).Health.DiffersFrom(soundHealth);
    }
}
