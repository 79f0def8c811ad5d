using System;
using System.Collections.Generic;
using System.IO;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace LubeController.Scripts.Records;

/// <summary>JSON for other programs that a person can read as well: indented, and no letter escaped that need not be.</summary>
public static class ReadableJson
{
    /// <summary>Writes an array and the end of its last line.</summary>
    /// <param name="elements">What it holds.</param>
    /// <param name="write">Writes one element as a single value.</param>
    /// <param name="output">Takes the text once all of it is written.</param>
    public static void WriteArray<T>(IEnumerable<T> elements, Action<T, Utf8JsonWriter> write, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(elements);
        ArgumentNullException.ThrowIfNull(write);
        ArgumentNullException.ThrowIfNull(output);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartArray();
            foreach (T element in elements)
                write(element, json);
            json.WriteEndArray();
        }

        output.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }
}
