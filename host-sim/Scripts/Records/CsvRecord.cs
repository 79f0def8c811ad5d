using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using LubeController.Emulator;
using LubeController.Files.Reading;

namespace LubeController.Scripts.Records;

/// <summary>Runs as comma-separated values: a heading, then one record a line; LF, SI units, numbers that read back exactly.</summary>
public static class CsvRecord
{
    /// <summary>The first line.</summary>
    public const string Heading = "time_us,signal,value";

    /// <summary>Writes a run.</summary>
    public static void Write(Trace trace, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write(Heading);
        writer.Write('\n');
        foreach (TraceRecord record in TraceRecords.Of(trace))
        {
            writer.Write(record.ToString());
            writer.Write('\n');
        }
    }

    /// <summary>Reads the records of a stored run.</summary>
    /// <exception cref="InvalidDataException">A line is no record; its number is named.</exception>
    public static IEnumerable<TraceRecord> Read(TextReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        if (reader.ReadLine() is not Heading)
            throw new InvalidDataException($"line 1 is not '{Heading}'");
        int number = 1;
        while (reader.ReadLine() is { } line)
        {
            number++;
            string[] fields = line.Split(',');
            if (fields.Length != 3
                || !long.TryParse(fields[0], NumberStyles.None, CultureInfo.InvariantCulture, out long time)
                || !double.TryParse(fields[2], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                throw new InvalidDataException($"line {number} is no record of time, signal and value: '{ShortText.Of(line)}'");
            }

            yield return new TraceRecord(time, fields[1], value);
        }
    }
}
