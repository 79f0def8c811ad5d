using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using LubeController.Tests.Support;

namespace LubeController.Cli.Tests;

/// <summary>One way in which files can be wrong, and where the program must point.</summary>
/// <param name="Category">What sort of wrong it is.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="File">File that must be named; the last part of its path.</param>
/// <param name="Line">Line that must be named.</param>
/// <param name="Field">Field that must be named.</param>
/// <param name="Write">Writes the files; returns the script to replay.</param>
public sealed record MalformedCase(string Category, string Name, string File, int Line, string Field, Func<TempFolder, string> Write)
{
    public override string ToString() => $"{Category}: {Name}";
}

/// <summary>Every way that is tried. All texts are invented.</summary>
public static class MalformedCorpus
{
    /// <summary>The first four lines of a sound script; its fifth line is where each case goes wrong.</summary>
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 1 h\n";
    private const string Whole = "(whole file)";

    public static IReadOnlyList<MalformedCase> All { get; } =
    [
        Script("syntax", "quotation mark left open", 5, "seed", "seed: 'seven\n"),
        Script("syntax", "list left open", 6, "steps", "steps: [\n"),
        Script("syntax", "group left open", 6, "steps[0].press", "steps:\n  - {at: 1 s, press: reset\n", line: 7),
        Script("syntax", "no colon after a field", 5, "duration", "seed 7\n", line: 5),
        Script("syntax", "two colons on one line", 5, "seed", "seed: a: b\n"),
        Script("syntax", "tab in the indentation", 6, "at", "steps:\n\t- at: 1 s\n"),
        Script("syntax", "crooked indentation", 7, "steps[0]", "steps:\n  - at: 1 s\n   press: reset\n"),
        Script("syntax", "field written twice", 5, "duration", "duration: 2 h\n"),
        Script("syntax", "second document", 5, Whole, "---\nseed: 1\n"),
        Script("syntax", "a type mark", 5, "seed", "seed: !!int 7\n"),
        Script("syntax", "a reference to a part", 5, "seed", "seed: *s\n"),
        Script("syntax", "a sign that begins no value", 5, "seed", "seed: @7\n"),
        Script("syntax", "an unknown escape", 5, "seed", "seed: \"\\q\"\n"),
        Text("syntax", "empty file", 1, Whole, ""),
        Text("syntax", "only a list", 1, Whole, "- script\n- plant\n"),
        Text("syntax", "only words", 1, Whole, "replay the blocked outlet\n"),
        Script("syntax", "a group as a name", 5, Whole, "? {a: b}\n: 1\n"),

        Script("unknown key", "of the script", 5, "seeds", "seeds: 7\n"),
        Script("unknown key", "of a step", 7, "steps[0].pres", "steps:\n  - at: 1 s\n    pres: reset\n    press: reset\n"),
        Script("unknown key", "of an expectation", 7, "expect[0].evermore", "expect:\n  - name: n\n    evermore: x\n    always: phase is rest\n"),
        Script("unknown key", "of an until", 8, "expect[0].until.holds", "expect:\n  - name: n\n    until:\n      holds: x\n      hold: phase is rest\n      until: phase is dose\n"),
        Plant("unknown key", "of the plant", "relief-valve:", "relieve-valve:", "relieve-valve"),
        Plant("unknown key", "of the reservoir", "  content: 3 l", "  contents: 3 l", "reservoir.contents"),
        Plant("unknown key", "of a section", "      breakaway: 8 bar", "      break: 8 bar", "divider.sections[1].break"),
        Settings("unknown key", "of the settings", "rest-time: 20 min\n", "rest-time"),
        Settings("unknown key", "of the rest rule", "rest-by: rule\nrest-fallback: 1 h\nrest-rule: {name: warm-rest, settings: {warm-over: 40 degC}}\n", "rest-rule.settings.warm-over", line: 4),
        Script("unknown key", "belonging to another action", 7, "steps[0].ramp", "steps:\n  - at: 1 s\n    ramp: 3 s\n    press: reset\n"),
        Plant("unknown key", "of another kind of pump", "  flow: 12 cm3/min", "  flow: 12 cm3/min\n  stroke: 4 mm", "pump.stroke", shift: 1),

        Text("wrong unit", "bananas", 4, "duration", Head.Replace("1 h", "5 bananas")),
        Text("wrong unit", "none at all", 4, "duration", Head.Replace("1 h", "3600")),
        Text("wrong unit", "a pressure for a time", 4, "duration", Head.Replace("1 h", "3 bar")),
        Text("wrong unit", "a capital letter", 4, "duration", Head.Replace("1 h", "3 H")),
        Text("wrong unit", "a comma in the number", 4, "duration", Head.Replace("1 h", "1,5 h")),
        Text("wrong unit", "no number", 4, "duration", Head.Replace("1 h", "hour")),
        Plant("wrong unit", "a length for a volume", "  volume: 20 cm3", "  volume: 20 cm", "line.volume"),
        Plant("wrong unit", "a flow for a volume", "  capacity: 4 l", "  capacity: 4 l/min", "reservoir.capacity"),
        Settings("wrong unit", "a count with a unit", "dose-edges: 3 cm3\n", "dose-edges"),
        Settings("wrong unit", "a speed in hertz", "shaft-fastest-speed: 50 Hz\n", "shaft-fastest-speed"),
        Script("wrong unit", "of a compared quantity", 7, "expect[0].always", "expect:\n  - name: n\n    always: pressure line < 40 cm3\n"),
        Script("wrong unit", "of a fault's magnitude", 8, "steps[0].magnitude", "steps:\n  - at: 1 s\n    fault: pump-worn\n    magnitude: 3 bar\n"),

        Text("wrong range", "no time at all", 4, "duration", Head.Replace("1 h", "0 s")),
        Text("wrong range", "a number without end", 4, "duration", Head.Replace("1 h", "1e999 s")),
        Script("wrong range", "scans slower than a second", 5, "scan-period", "scan-period: 2 s\n"),
        Script("wrong range", "scans between two milliseconds", 5, "scan-period", "scan-period: 1.5 ms\n"),
        Script("wrong range", "a seed below nought", 5, "seed", "seed: -1\n"),
        Script("wrong range", "a bound of no scans", 5, "scan-bound", "scan-bound: 0\n"),
        Script("wrong range", "a time before the run", 6, "steps[0].at", "steps:\n  - at: -1 s\n    press: reset\n"),
        Script("wrong range", "a window that ends before it begins", 9, "expect[0].to", "expect:\n  - name: n\n    always: phase is rest\n    from: 9 min\n    to: 8 min\n"),
        Script("wrong range", "a magnitude above all", 8, "steps[0].magnitude", "steps:\n  - at: 1 s\n    fault: pump-worn\n    magnitude: 120 %\n"),
        Script("wrong range", "more than the reservoir holds", 7, "steps[0].refill", "steps:\n  - at: 1 s\n    refill: 4.1 l\n"),
        Plant("wrong range", "a piston too small to see", "volume-per-stroke: 0.5 cm3", "volume-per-stroke: 0.5 mm3", "divider.sections[3].volume-per-stroke"),
        Plant("wrong range", "a switch that resets above its trip", "  reset: 130 bar", "  reset: 160 bar", "pressure-switch.reset"),
        Settings("wrong range", "a rest of no time", "rest: 0 s\n", "rest"),
        Settings("wrong range", "a rest that is always overdue", "overdue-limit: 20 min\n", "overdue-limit"),
        Settings("wrong range", "finer than a millisecond", "retry-pause: 0.1005 s\n", "retry-pause"),

        Text("missing plant", "not named", 1, "plant", Head.Replace("plant: salt.plant.yaml\n", "")),
        Text("missing plant", "not there", 2, "plant", Head.Replace("salt.plant", "pepper.plant")),
        Text("missing plant", "a folder", 2, "plant", Head.Replace("salt.plant.yaml", ".")),
        Text("missing plant", "an empty name", 2, "plant", Head.Replace("salt.plant.yaml", "")),
        Text("missing plant", "a list of plants", 2, "plant", Head.Replace("salt.plant.yaml", "[salt.plant.yaml]")),
        Text("missing plant", "the settings in its place", 2, Whole, Head.Replace("salt.plant.yaml", "plain.settings.yaml"), file: "plain.settings.yaml"),
        Text("missing plant", "no settings beside it", 3, "settings", Head.Replace("plain.settings", "fancy.settings")),
        new("missing plant", "its basis not there", "orphan.plant.yaml", 1, "based-on", folder =>
        {
            folder.Write("orphan.plant.yaml", "based-on: parent.plant.yaml\nplant: orphan\n");
            return folder.Write("case.yaml", Head.Replace("salt.plant", "orphan.plant"));
        }),

        Text("cyclic reference", "a script based on itself", 1, "based-on", "based-on: case.yaml\nscript: x\n"),
        new("cyclic reference", "two scripts based on each other", "other.yaml", 1, "based-on", folder =>
        {
            folder.Write("other.yaml", "based-on: case.yaml\n");
            return folder.Write("case.yaml", "based-on: other.yaml\n");
        }),
        new("cyclic reference", "three plants in a ring", "c.plant.yaml", 1, "based-on", folder =>
        {
            folder.Write("a.plant.yaml", "based-on: b.plant.yaml\n");
            folder.Write("b.plant.yaml", "based-on: c.plant.yaml\n");
            folder.Write("c.plant.yaml", "based-on: a.plant.yaml\n");
            return folder.Write("case.yaml", Head.Replace("salt.plant", "a.plant"));
        }),
        new("cyclic reference", "settings based on themselves", "own.settings.yaml", 2, "based-on", folder =>
        {
            folder.Write("own.settings.yaml", "title: own\nbased-on: ./own.settings.yaml\n");
            return folder.Write("case.yaml", Head.Replace("plain.settings", "own.settings"));
        }),
        Script("cyclic reference", "a step that waits for itself", 7, "steps[0].after", "steps:\n  - name: a\n    after: a\n    press: reset\n"),
        Script("cyclic reference", "two steps that wait for each other", 7, "steps[0].after", "steps:\n  - name: a\n    after: b\n    press: reset\n  - name: b\n    after: a\n    press: reset\n"),
        Script("cyclic reference", "steps in a ring through a watch", 8, "steps[0].since", "steps:\n  - name: a\n    after: phase is dose\n    since: c\n    press: reset\n  - name: b\n    after: a\n    press: reset\n  - name: c\n    after: b\n    press: reset\n"),

        new("huge file", "more bytes than are read", "case.yaml", 1, Whole, folder => folder.Write("case.yaml", Head + "# " + new string('x', 1024 * 1024))),
        Script("huge file", "one text without end", 5, "seed", "seed: " + new string('7', 3000) + "\n"),
        Script("huge file", "a field's name without end", 5, Whole, "? " + new string('k', 3000) + "\n: 1\n"),
        Script("huge file", "lists in lists in lists", 5, "steps" + string.Concat(Enumerable.Repeat("[0]", 15)), "steps: " + new string('[', 40) + new string(']', 40) + "\n"),
        Script("huge file", "more values than are read", 5, "steps[19994]", "steps: [" + string.Join(",", Enumerable.Repeat("1", 30_000)) + "]\n"),
        Script("huge file", "an alias bomb", 5, "a", "a: &a [x, x]\nb: &b [*a, *a, *a, *a, *a, *a]\nc: [*b, *b, *b, *b, *b, *b]\n"),
        Script("huge file", "more steps than are read", 6, "steps", "steps:\n" + string.Concat(Enumerable.Repeat("  - {at: 1 s, press: reset}\n", 1001))),
        new("huge file", "a chain of files without end", "f8.yaml", 1, "based-on", folder =>
        {
            for (int number = 1; number <= 20; number++)
                folder.Write($"f{number}.yaml", $"based-on: f{number + 1}.yaml\n");
            return folder.At("f1.yaml");
        }),

        Bytes("wrong encoding", "UTF-16, low byte first", 1, [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Head)]),
        Bytes("wrong encoding", "UTF-16, high byte first", 1, [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Head)]),
        Bytes("wrong encoding", "UTF-16 without a mark", 1, Encoding.Unicode.GetBytes(Head)),
        Bytes("wrong encoding", "UTF-32, low byte first", 1, [0xFF, 0xFE, 0, 0, .. Encoding.UTF32.GetBytes(Head)]),
        Bytes("wrong encoding", "UTF-32, high byte first", 1, [0, 0, 0xFE, 0xFF, .. new UTF32Encoding(bigEndian: true, byteOrderMark: false).GetBytes(Head)]),
        Bytes("wrong encoding", "a degree sign of Latin-1", 5, [.. Encoding.ASCII.GetBytes(Head + "# at 20 "), 0xB0, .. Encoding.ASCII.GetBytes("C\n")]),
        Bytes("wrong encoding", "half of a character", 5, [.. Encoding.ASCII.GetBytes(Head + "# "), 0xC3]),
        Bytes("wrong encoding", "a character written too long", 5, [.. Encoding.ASCII.GetBytes(Head + "# "), 0xE0, 0x80, 0xAF, 0x0A]),
        Bytes("wrong encoding", "a control character", 5, [.. Encoding.ASCII.GetBytes(Head + "# "), 0x1B, .. Encoding.ASCII.GetBytes("[31m\n")]),
        Bytes("wrong encoding", "a mark in the middle", 5, [.. Encoding.ASCII.GetBytes(Head), 0xEF, 0xBB, 0xBF, 0x0A]),
    ];

    private static MalformedCase Script(string category, string name, int where, string field, string rest, int? line = null) =>
        new(category, name, "case.yaml", line ?? where, field, folder => folder.Write("case.yaml", Head + rest));

    private static MalformedCase Text(string category, string name, int line, string field, string text, string file = "case.yaml") =>
        new(category, name, file, line, field, folder => folder.Write("case.yaml", text));

    private static MalformedCase Bytes(string category, string name, int line, byte[] bytes) =>
        new(category, name, "case.yaml", line, Whole, folder => folder.Write("case.yaml", bytes));

    private static MalformedCase Plant(string category, string name, string old, string wrong, string field, int shift = 0)
    {
        string[] sample = System.IO.File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "salt.plant.yaml")).ReplaceLineEndings("\n").Split('\n');
        int line = Array.FindIndex(sample, text => text.Contains(old, StringComparison.Ordinal));
        return new(category, name, "wrong.plant.yaml", line + 1 + shift, field, folder =>
        {
            folder.Write("wrong.plant.yaml", string.Join('\n', sample.Select((text, index) => index == line ? text.Replace(old, wrong, StringComparison.Ordinal) : text)));
            return folder.Write("case.yaml", Head.Replace("salt.plant", "wrong.plant"));
        });
    }

    private static MalformedCase Settings(string category, string name, string text, string field, int line = 2) =>
        new(category, name, "wrong.settings.yaml", line, field, folder =>
        {
            folder.Write("wrong.settings.yaml", "title: wrong\n" + text);
            return folder.Write("case.yaml", Head.Replace("plain.settings", "wrong.settings"));
        });
}
