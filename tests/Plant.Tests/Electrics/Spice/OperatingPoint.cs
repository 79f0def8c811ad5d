using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;
using LubeController.Tests.Support.Spice;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>Operating points of direct-current circuits by the general circuit simulator ngspice (Debian).</summary>
internal static class OperatingPoint
{
    /// <summary>Tight tolerances, and a resistance from every node to ground so that a floating node is no error there.</summary>
    internal static string Options(string shuntOhms) =>
        $".options reltol=1e-9 abstol=1e-15 vntol=1e-12 gmin=1e-15 rshunt={shuntOhms} pivtol=1e-20 itl1=1000";

    /// <summary>Finds the operating point of each deck.</summary>
    /// <returns>For each deck the node voltages and source currents by name; none where ngspice finds no operating point.</returns>
    internal static IReadOnlyList<Dictionary<string, double>> Of(IReadOnlyList<string> decks)
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
            return Parse(NgSpice.Run(script), decks.Count);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
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
