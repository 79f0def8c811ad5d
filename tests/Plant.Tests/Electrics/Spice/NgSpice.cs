using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Text;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>The general circuit simulator ngspice (Debian), run without a screen, as a second opinion on direct-current circuits.</summary>
internal static class NgSpice
{
    /// <summary>Tight tolerances, and a resistance from every node to ground so that a floating node is no error there.</summary>
    internal static string Options(string shuntOhms) =>
        $".options reltol=1e-9 abstol=1e-15 vntol=1e-12 gmin=1e-15 rshunt={shuntOhms} pivtol=1e-20 itl1=1000";

    /// <summary>Finds the operating point of each deck.</summary>
    /// <returns>For each deck the node voltages and source currents by name; none where ngspice finds no operating point.</returns>
    internal static IReadOnlyList<Dictionary<string, double>> OperatingPoints(IReadOnlyList<string> decks)
    {
        string folder = Directory.CreateTempSubdirectory("ngspice-").FullName;
        try
        {
            var control = new StringBuilder("* decks\n.control\nset numdgts=10\n");
            for (int index = 0; index < decks.Count; index++)
            {
                string path = Path.Combine(folder, $"{index}.cir");
                File.WriteAllText(path, decks[index]);
                control.Append(CultureInfo.InvariantCulture, $"source {path}\necho deck {index}\nop\nprint all\nremcirc\n");
            }

            string script = Path.Combine(folder, "all.sp");
            File.WriteAllText(script, control.Append("quit\n.endc\n.end\n").ToString());
            return Parse(Run(script), decks.Count);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Run(string script)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", script]) { RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start)!;
            System.Threading.Tasks.Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.Result;
        }
        catch (Win32Exception missing)
        {
            throw new InvalidOperationException("ngspice is needed as a second opinion on the circuits and was not found: install it ('apt-get install ngspice'), or let tests/run do so", missing);
        }
    }

    private static List<Dictionary<string, double>> Parse(string output, int decks)
    {
        var all = new List<Dictionary<string, double>>();
        foreach (string line in output.Split('\n'))
        {
            if (line.StartsWith("deck ", StringComparison.Ordinal))
            {
                all.Add([]);
                continue;
            }

            int equals = line.IndexOf(" = ", StringComparison.Ordinal);
            if (equals > 0 && all.Count > 0 && double.TryParse(line[(equals + 3)..], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
                all[^1][line[..equals].Trim()] = value;
        }

        if (all.Count != decks)
            throw new InvalidOperationException($"ngspice took {all.Count} of {decks} decks:\n{output}");
        return all;
    }
}
