using System;
using System.Collections.Generic;

namespace LubeController.Scripts.Records;

/// <summary>The first place at which two runs differ.</summary>
/// <param name="Record">Number of the record, from 1.</param>
/// <param name="Field"><c>time</c>, <c>signal</c>, <c>value</c>, or <c>length</c> where one run has more records.</param>
/// <param name="Baseline">The stored record, or null where the stored run has ended.</param>
/// <param name="Current">This run's record, or null where it has ended.</param>
public sealed record RecordDifference(long Record, string Field, TraceRecord? Baseline, TraceRecord? Current)
{
    /// <summary>Record, field, and both records.</summary>
    public override string ToString() =>
        $"record {Record} differs in {Field}: baseline '{Text(Baseline)}', this run '{Text(Current)}'";

    private static string Text(TraceRecord? record) => record?.ToString() ?? "(no more records)";
}

/// <summary>Compares a run with a stored one, record by record and field by field.</summary>
public static class BaselineComparison
{
    /// <summary>The first difference, or null where the runs are the same.</summary>
    public static RecordDifference? FirstDifference(IEnumerable<TraceRecord> baseline, IEnumerable<TraceRecord> current)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        ArgumentNullException.ThrowIfNull(current);
        using IEnumerator<TraceRecord> stored = baseline.GetEnumerator();
        using IEnumerator<TraceRecord> now = current.GetEnumerator();
        for (long number = 1; ; number++)
        {
            bool more = stored.MoveNext();
            bool moreNow = now.MoveNext();
            if (!more && !moreNow)
                return null;
            if (more != moreNow)
                return new RecordDifference(number, "length", more ? stored.Current : null, moreNow ? now.Current : null);
            string? field = Field(stored.Current, now.Current);
            if (field != null)
                return new RecordDifference(number, field, stored.Current, now.Current);
        }
    }

    private static string? Field(TraceRecord stored, TraceRecord now)
    {
        if (stored.TimeUs != now.TimeUs)
            return "time";
        if (!string.Equals(stored.Signal, now.Signal, StringComparison.Ordinal))
            return "signal";
        return BitConverter.DoubleToInt64Bits(stored.Value) != BitConverter.DoubleToInt64Bits(now.Value) ? "value" : null;
    }
}
