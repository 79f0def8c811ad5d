using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using LubeController.Emulator;

namespace LubeController.Scripts.Records;

/// <summary>
/// Runs as value change dumps (IEEE 1364), in the subset that general viewers read alike: timescale 1 us, one-bit wires
/// and reals, ASCII names without spaces, comments only in the header, a closing time stamp. A signal that is one of some
/// words becomes a wire for each word, for instance <c>phase_rest</c>. Reals step from point to point.
/// </summary>
public sealed class VcdRecord
{
    private readonly Trace _trace;
    private readonly TextWriter _writer;
    private readonly Dictionary<string, string[]> _codes = new(StringComparer.Ordinal);

    private VcdRecord(Trace trace, TextWriter writer)
    {
        _trace = trace;
        _writer = writer;
    }

    /// <summary>Writes a run.</summary>
    public static void Write(Trace trace, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(writer);
        var record = new VcdRecord(trace, writer);
        record.Header();
        record.Changes();
    }

    private static bool IsReal(Signal signal) => signal.Kind != SignalKind.OnOff && signal.Labels == null;

    private void Header()
    {
        Line("$version lubebench $end");
        Line("$comment values in SI units $end");
        Line("$timescale 1 us $end");
        Line("$scope module lubebench $end");
        var taken = new HashSet<string>(StringComparer.Ordinal);
        int next = 0;
        foreach (Signal signal in _trace.Signals)
        {
            var codes = new List<string>();
            if (signal.Labels == null)
            {
                codes.Add(Variable(signal.Name, IsReal(signal), next++, taken));
            }
            else
            {
                foreach (string label in signal.Labels)
                    codes.Add(Variable($"{signal.Name}_{label}", real: false, next++, taken));
            }

            _codes.Add(signal.Name, [.. codes]);
        }

        Line("$upscope $end");
        Line("$enddefinitions $end");
    }

    private string Variable(string name, bool real, int index, HashSet<string> taken)
    {
        string code = VcdNames.Code(index);
        Line($"$var {(real ? "real 64" : "wire 1")} {code} {VcdNames.Unique(name, taken)} $end");
        return code;
    }

    private void Changes()
    {
        Line("#0");
        Line("$dumpvars");
        foreach (Signal signal in _trace.Signals)
            Dump(signal, signal.Count > 0 && signal.TimeUs(0) == 0 ? signal.Value(signal.IndexAt(0)) : double.NaN);
        Line("$end");
        long time = 0;
        foreach (TraceRecord record in TraceRecords.Of(_trace))
        {
            if (record.TimeUs == 0)
                continue;
            if (record.TimeUs != time)
            {
                time = record.TimeUs;
                Line("#" + time.ToString(CultureInfo.InvariantCulture));
            }

            if (_trace.Find(record.Signal) is { } signal)
                Dump(signal, record.Value);
        }
    }

    private void Dump(Signal signal, double value)
    {
        string[] codes = _codes[signal.Name];
        if (IsReal(signal))
        {
            Line($"r{(double.IsFinite(value) ? value : 0.0).ToString("R", CultureInfo.InvariantCulture)} {codes[0]}");
            return;
        }

        for (int index = 0; index < codes.Length; index++)
        {
            bool on = signal.Labels == null ? value != 0.0 : value == index;
            Line((double.IsNaN(value) ? "x" : on ? "1" : "0") + codes[index]);
        }
    }

    private void Line(string text)
    {
        _writer.Write(text);
        _writer.Write('\n');
    }
}
