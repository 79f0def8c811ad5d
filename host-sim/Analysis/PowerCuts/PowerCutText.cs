using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Emulator.Storage;

namespace LubeController.Analysis.PowerCuts;

/// <summary>What a sweep found, for a terminal.</summary>
public static class PowerCutText
{
    /// <summary>The lines.</summary>
    /// <param name="result">What it found.</param>
    /// <param name="hours">Length of the run.</param>
    public static IEnumerable<string> Lines(PowerCutResult result, int hours)
    {
        ArgumentNullException.ThrowIfNull(result);
        yield return string.Create(CultureInfo.InvariantCulture, $"power cuts over {hours} h: {result.Starts} starts, {result.Doses} doses, {result.Writes.Values.Sum()} writes, {result.Cuts.Values.Sum()} cuts");
        yield return $"{"kind of write",-26}{"writes",10}{"cut",10}{"cuts",12}";
        foreach (WriteKind kind in Enum.GetValues<WriteKind>())
            yield return string.Create(CultureInfo.InvariantCulture, $"{NameOf(kind),-26}{result.Writes[kind],10}{result.WritesCut[kind],10}{result.Cuts[kind],12}");
        yield return string.Create(CultureInfo.InvariantCulture, $"most rest given back by a cut: {result.MostRestBackMs / 1000.0} s");
        foreach (PowerCutViolation violation in result.Violations)
        {
            string place = violation.Byte < 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", cut after {violation.Byte} bytes, rest {NameOf(violation.Rest)}");
            yield return string.Create(CultureInfo.InvariantCulture, $"write {violation.Write} ({NameOf(violation.Kind)}){place}: {violation.Text}");
        }

        yield return result.Violations.Count == 0 ? "everything promised holds" : "something promised does not hold";
    }

    private static string NameOf(WriteKind kind) => kind switch
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

    private static string NameOf(TearRest rest) => rest switch
    {
        TearRest.Old => "old",
        TearRest.Erased => "erased",
        _ => "garbage",
    };
}
