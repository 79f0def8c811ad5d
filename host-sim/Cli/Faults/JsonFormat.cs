using System.Collections.Generic;
using System.IO;
using System.Text.Json;
using LubeController.Plant.Faults;
using LubeController.Scripts.Records;
using LubeController.Scripts.Running;

namespace LubeController.Cli.Faults;

/// <summary>For other programs: an array of objects. Numbers are in the unit beside them.</summary>
internal sealed class JsonFormat : IFaultFormat
{
    /// <inheritdoc/>
    public void Write(IReadOnlyList<FaultRow> rows, bool withParts, TextWriter output) =>
        ReadableJson.WriteArray(rows, (row, json) => Write(row, withParts, json), output);

    private static void Write(FaultRow row, bool withParts, Utf8JsonWriter json)
    {
        Fault fault = row.Fault;
        json.WriteStartObject();
        json.WriteString("name", fault.Name);
        json.WriteString("part", row.PartText);
        json.WriteString("place", fault.Place);
        json.WriteString("manner", row.Manner);
        json.WriteBoolean("gradual", fault.Gradual);
        json.WriteStartArray("parameters");
        foreach (FaultParameter parameter in fault.Parameters)
            Write(parameter, json);
        json.WriteEndArray();
        json.WriteString("changes", fault.Effect);
        json.WriteString("noticed", fault.Noticed);
        json.WriteString("needs", fault.Needs);
        json.WriteString("heals", row.Heals);
        json.WriteString("healing", fault.HealingNote);
        if (withParts)
        {
            json.WriteStartArray("parts");
            foreach (string part in row.Parts)
                json.WriteStringValue(part);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Write(FaultParameter parameter, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", parameter.Name);
        json.WriteString("meaning", parameter.Meaning);
        json.WriteString("unit", BenchFaults.FamilyOf(parameter).UsualUnit);
        json.WriteNumber("minimum", FaultRow.Usual(parameter, parameter.Minimum));
        json.WriteNumber("maximum", FaultRow.Usual(parameter, parameter.Maximum));
        json.WriteNumber("default", FaultRow.Usual(parameter, parameter.Default));
        if (parameter.Harmless is { } harmless)
            json.WriteNumber("harmless", FaultRow.Usual(parameter, harmless));
        json.WriteEndObject();
    }
}
