using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Xml;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Reporting;

/// <summary>
/// Verdicts as JUnit XML, which build servers read: a suite for each script, a case for each expectation. What was not
/// exercised is an error there, since a skipped test would count as no harm. No times: the clock is virtual.
/// </summary>
public static class JunitReport
{
    /// <summary>Writes a report.</summary>
    public static void Write(IReadOnlyList<ScriptVerdict> verdicts, TextWriter writer)
    {
        var settings = new XmlWriterSettings { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false) };
        using var xml = XmlWriter.Create(writer, settings);
        xml.WriteStartDocument();
        xml.WriteStartElement("testsuites");
        foreach (ScriptVerdict verdict in verdicts)
            Suite(verdict, xml);
        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    private static void Suite(ScriptVerdict verdict, XmlWriter xml)
    {
        int compared = verdict.Difference == null ? 0 : 1;
        int failures = verdict.Expectations.Count(expectation => expectation.Outcome == Outcome.Failed) + compared;
        int errors = verdict.Expectations.Count(expectation => expectation.Outcome == Outcome.NotExercised) + verdict.Omissions.Count;
        xml.WriteStartElement("testsuite");
        Attribute(xml, "name", verdict.Script.Path);
        Attribute(xml, "tests", Number(verdict.Expectations.Count + verdict.Omissions.Count + compared));
        Attribute(xml, "failures", Number(failures));
        Attribute(xml, "errors", Number(errors));
        Attribute(xml, "skipped", "0");
        Draws(verdict, xml);
        foreach (ExpectationVerdict expectation in verdict.Expectations)
            Case(verdict, expectation, xml);
        if (verdict.Difference is { } difference)
        {
            StartCase(verdict, "the run is that of the baseline", xml);
            Result(xml, "failure", "differs", $"record {Number((int)Math.Min(difference.Record, int.MaxValue))} differs in {difference.Field}", difference.ToString());
            xml.WriteEndElement();
        }

        foreach (string omission in verdict.Omissions)
        {
            StartCase(verdict, "the whole script is exercised", xml);
            Result(xml, "error", "not exercised", omission, omission);
            xml.WriteEndElement();
        }

        // After the cases, as the form has it.
        if (AssumptionText.Of([verdict.Script.Plant]) is { Count: > 0 } assumed)
            xml.WriteElementString("system-out", Legal(string.Join('\n', assumed)));
        xml.WriteEndElement();
    }

    private static void Draws(ScriptVerdict verdict, XmlWriter xml)
    {
        Step[] drawn = [.. verdict.Script.Steps.Where(step => step.Drawn.Length > 0)];
        if (drawn.Length == 0)
            return;
        xml.WriteStartElement("properties");
        Property("seed", verdict.Script.Seed.ToString(CultureInfo.InvariantCulture));
        foreach (Step step in drawn)
            Property($"drawn for {step.Label}", step.Drawn);
        xml.WriteEndElement();

        void Property(string name, string value)
        {
            xml.WriteStartElement("property");
            Attribute(xml, "name", name);
            Attribute(xml, "value", value);
            xml.WriteEndElement();
        }
    }

    private static void Case(ScriptVerdict verdict, ExpectationVerdict expectation, XmlWriter xml)
    {
        StartCase(verdict, expectation.Expectation.Name, xml);
        string margin = expectation.Outcome == Outcome.Held ? ", " + VerdictText.MarginText(expectation) : expectation.Margin is { } value ? $", margin {value}" : "";
        string seen = expectation.Seen.Length > 0 ? ". " + expectation.Seen : "";
        string details = $"{expectation.Expectation}: {expectation.Reason}{margin}{seen}";
        if (expectation.Outcome == Outcome.Failed)
            Result(xml, "failure", "failed", expectation.Reason, details);
        else if (expectation.Outcome == Outcome.NotExercised)
            Result(xml, "error", "not exercised", expectation.Reason, details);
        else
            xml.WriteElementString("system-out", Legal(details));
        xml.WriteEndElement();
    }

    private static void StartCase(ScriptVerdict verdict, string name, XmlWriter xml)
    {
        xml.WriteStartElement("testcase");
        Attribute(xml, "classname", verdict.Script.Path);
        Attribute(xml, "name", name);
    }

    private static void Result(XmlWriter xml, string element, string type, string message, string details)
    {
        xml.WriteStartElement(element);
        Attribute(xml, "type", type);
        Attribute(xml, "message", message);
        xml.WriteString(Legal(details));
        xml.WriteEndElement();
    }

    private static void Attribute(XmlWriter xml, string name, string value) => xml.WriteAttributeString(name, Legal(value));

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The text without characters that XML 1.0 forbids; halves of a pair are dropped too.</summary>
    private static string Legal(string text)
    {
        var legal = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (rune.Value >= 0x10000 || XmlConvert.IsXmlChar((char)rune.Value))
                legal.Append(rune.ToString());
        }

        return legal.ToString();
    }
}
