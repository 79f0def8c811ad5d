using System;
using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using LubeController.Analysis.Alarms;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;

namespace LubeController.Cli;

/// <summary><c>lubebench alarms</c>: what each alarm means, does, and asks of a person.</summary>
internal static class AlarmsCommand
{
    private const string Description = """
        Tells of each alarm, or of those named: its cause, how it acts on the pump, its category (NAMUR NE 107), whether it
        latches, its delays, what hides it as a consequence, and what a person should do.

        Exit code: 0 listed; 2 bad input.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var names = new Argument<string[]>("NAME") { Description = "Alarms; all if none is named", Arity = ArgumentArity.ZeroOrMore };
        var format = new Option<string>("--format") { HelpName = "FORMAT", Description = "text or markdown", DefaultValueFactory = _ => "text" };
        format.AcceptOneOf("text", "markdown");
        var command = new Command("alarms", Description) { names, format };
        command.Does(parsed => List(parsed.GetValue(names) ?? [], parsed.GetValue(format) == "markdown", host));
        return command;
    }

    private static ExitCode List(string[] names, bool markdown, CommandHost host)
    {
        string[] known = [.. AlarmSheet.All.Select(sheet => sheet.Name)];
        string[] unknown = [.. names.Where(name => !known.Contains(name))];
        if (unknown.Length > 0)
            return host.Refuse(unknown.Select(name => $"lubebench: there is no alarm '{name}'{(NearestName.Of(name, known) is { } near ? $"; did you mean '{near}'?" : $"; known: {string.Join(", ", known)}")}"));
        AlarmSheet[] sheets = [.. AlarmSheet.All.Where(sheet => names.Length == 0 || names.Contains(sheet.Name))];
        if (markdown)
            WriteTable(sheets, host.Output);
        else
            WriteText(sheets, host.Output);
        return ExitCode.Done;
    }

    private static void WriteText(IEnumerable<AlarmSheet> sheets, TextWriter output)
    {
        foreach (AlarmSheet sheet in sheets)
        {
            output.WriteLine(sheet.Name);
            output.WriteLine($"  raised when  {sheet.Cause}");
            output.WriteLine($"  acts         {sheet.Acts}");
            output.WriteLine($"  category     {sheet.Category}");
            output.WriteLine($"  latches      {(sheet.Latches ? "yes, until reset" : "no")}");
            output.WriteLine($"  delays       {Delays(sheet)}");
            if (sheet.SuppressedBy.Any())
                output.WriteLine($"  hidden by    {string.Join(", ", sheet.SuppressedBy)}");
            output.WriteLine($"  to do        {sheet.WhatToDo}");
        }

        output.WriteLine();
        output.WriteLine(AlarmSheet.Caution);
    }

    private static void WriteTable(IEnumerable<AlarmSheet> sheets, TextWriter output)
    {
        output.WriteLine("| alarm | raised when | acts | category | latches | delays | hidden by | what to do |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (AlarmSheet sheet in sheets)
            output.WriteLine($"| `{sheet.Name}` | {sheet.Cause} | {sheet.Acts} | {sheet.Category} | {(sheet.Latches ? "yes" : "no")} | {Delays(sheet)} | {string.Join(", ", sheet.SuppressedBy)} | {sheet.WhatToDo} |");
    }

    private static string Delays(AlarmSheet sheet)
    {
        string on = sheet.DelayOn.Maximum == 0 ? "on: none, it is raised at once" : $"on: {Preset(sheet.DelayOn)} unless set, up to {SettingText.Write(sheet.DelayOn, sheet.DelayOn.Maximum)}";
        return $"{on}; off: {Preset(sheet.DelayOff)} unless set";
    }

    private static string Preset(SettingSpec delay) => SettingText.Write(delay, delay.Preset);
}
