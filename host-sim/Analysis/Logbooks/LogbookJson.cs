using System;
using System.Collections.Generic;
using System.IO;
using System.Text.Json;
using LubeController.Scripts.Records;

namespace LubeController.Analysis.Logbooks;

/// <summary>A logbook for other programs: an array of objects; what is not known is null. Times are seconds powered.</summary>
public static class LogbookJson
{
    /// <summary>Writes it.</summary>
    public static void Write(IEnumerable<LogOccurrence> occurrences, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(occurrences);
        ArgumentNullException.ThrowIfNull(output);
        ReadableJson.WriteArray(occurrences, Write, output);
    }

    private static void Write(LogOccurrence one, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteNumber("number", one.Number);
        json.WriteString("kind", one.Kind);
        json.WriteString("what", one.What);
        Text(json, "detail", one.Detail);
        json.WriteString("by", one.By);
        Seconds(json, "beganS", one.Began.UptimeMs);
        Text(json, "beganAt", LogbookTimes.At(one.Began));
        Seconds(json, "lastedS", one.LastedMs);
        Seconds(json, "conditionEndedS", one.ConditionEnded?.UptimeMs);
        Seconds(json, "acknowledgedS", one.Acknowledged?.UptimeMs);
        Text(json, "acknowledgedBy", one.AcknowledgedBy);
        Seconds(json, "resetS", one.Reset?.UptimeMs);
        json.WriteBoolean("firstUp", one.FirstUp);
        json.WriteStartArray("suppressedBy");
        foreach (string cause in one.SuppressedBy)
            json.WriteStringValue(cause);
        json.WriteEndArray();
        Text(json, "hidden", one.Hidden);
        json.WriteEndObject();
    }

    private static void Text(Utf8JsonWriter json, string name, string text)
    {
        if (text.Length > 0)
            json.WriteString(name, text);
        else
            json.WriteNull(name);
    }

    private static void Seconds(Utf8JsonWriter json, string name, long? milliseconds)
    {
        if (milliseconds is { } time)
            json.WriteNumber(name, time / 1000m);
        else
            json.WriteNull(name);
    }
}
