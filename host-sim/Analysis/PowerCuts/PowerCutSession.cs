using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Storage;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;

namespace LubeController.Analysis.PowerCuts;

/// <summary>What the user asks of a sweep.</summary>
/// <param name="SettingsFile">Settings; null for settings that come by every kind of write soon.</param>
/// <param name="Hours">Length of the run, 1 or more.</param>
/// <param name="Jobs">Threads, 1 or more.</param>
/// <param name="MostOfKind">Most writes of a kind that are cut; all by default.</param>
/// <param name="Layer">Puts a layer between the main loop and the storage; null for none.</param>
public sealed record PowerCutOptions(string? SettingsFile, int Hours, int Jobs, int MostOfKind = int.MaxValue, Func<IBlockStorage, IBlockStorage>? Layer = null);

/// <summary>Reads settings, sweeps, and tells what was found.</summary>
/// <param name="rules">The rest rules that are compiled in.</param>
public sealed class PowerCutSession(IReadOnlyList<RestRuleKind> rules)
{
    /// <summary>Exit code: everything promised holds.</summary>
    public const int AllHeld = 0;

    /// <summary>Exit code: something promised does not hold.</summary>
    public const int NotHeld = 1;

    /// <summary>Exit code: bad input.</summary>
    public const int BadInput = 2;

    private const int RefusalsAnHour = 150;

    /// <summary>Settings that come by every kind of write within an hour.</summary>
    public static Settings UsualSettings()
    {
        var settings = new Settings();
        settings[SettingField.RestMs] = 5 * 60 * 1000;
        settings[SettingField.LevelLowFitted] = 1;
        settings[SettingField.LevelEmptyFitted] = 1;
        return settings;
    }

    /// <summary>Carries it out.</summary>
    /// <returns>The exit code.</returns>
    public int Run(PowerCutOptions options, TextWriter output, TextWriter errors, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        var problems = new ProblemList();
        ControlSettings? settings = options.SettingsFile is { } file ? SettingsReader.Read(file, rules, problems) : new ControlSettings(UsualSettings(), null);
        foreach (Problem problem in problems.All)
            errors.WriteLine(problem);
        if (settings == null)
            return BadInput;
        var setup = new PowerCutSetup
        {
            Settings = settings.Values,
            MakeRule = settings.Rule is { } rule ? rule.Make : null,
            Steps = PowerCutSchedule.Hours(options.Hours, RefusalsAnHour),
            DurationMs = PowerCutSchedule.LengthMs(options.Hours),
            Jobs = options.Jobs,
            MostOfKind = options.MostOfKind,
            Layer = options.Layer,
        };
        PowerCutResult result = PowerCutSweep.Run(setup, cancel);
        foreach (string line in Text(result, options.Hours))
            output.WriteLine(line);
        return result.Violations.Count == 0 ? AllHeld : NotHeld;
    }

    /// <summary>The name of a kind of write, as people read it.</summary>
    public static string NameOf(WriteKind kind) => kind switch
    {
        WriteKind.Settings => "settings",
        WriteKind.SettingsMirror => "settings, other bank",
        WriteKind.BootStart => "boot record at a start",
        WriteKind.BootTold => "boot record, fault told",
        WriteKind.BootFault => "boot record, fault",
        WriteKind.StateStart => "state at a start",
        WriteKind.StateEvent => "state by event",
        WriteKind.StateInterval => "state by interval",
        WriteKind.LogEntry => "logbook entry",
        WriteKind.LogTurn => "logbook turn, new block",
        _ => "logbook turn, oldest",
    };

    private static IEnumerable<string> Text(PowerCutResult result, int hours)
    {
        yield return string.Create(CultureInfo.InvariantCulture, $"power cuts over {hours} h: {result.Starts} starts, {result.Doses} doses, {result.Writes.Values.Sum()} writes, {result.Cuts.Values.Sum()} cuts");
        yield return $"{"kind of write",-26}{"writes",10}{"cut",10}{"cuts",12}";
        foreach (WriteKind kind in Enum.GetValues<WriteKind>())
            yield return string.Create(CultureInfo.InvariantCulture, $"{NameOf(kind),-26}{result.Writes[kind],10}{result.WritesCut[kind],10}{result.Cuts[kind],12}");
        yield return string.Create(CultureInfo.InvariantCulture, $"most rest given back by a cut: {result.MostRestBackMs / 1000.0} s");
        foreach (PowerCutViolation violation in result.Violations)
        {
            string place = violation.Byte < 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", cut after {violation.Byte} bytes, rest {RestName(violation.Rest)}");
            yield return string.Create(CultureInfo.InvariantCulture, $"write {violation.Write} ({NameOf(violation.Kind)}){place}: {violation.Text}");
        }

        yield return result.Violations.Count == 0 ? "everything promised holds" : "something promised does not hold";
    }

    private static string RestName(TearRest rest) => rest switch
    {
        TearRest.Old => "old",
        TearRest.Erased => "erased",
        _ => "garbage",
    };
}
