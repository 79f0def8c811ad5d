using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;

namespace LubeController.Tests.Support.Spice;

/// <summary>
/// The general circuit simulator ngspice (Debian), run without a screen, as a second opinion. Tests ask <see cref="ExternalTool.NgSpice"/>
/// first; where it is missing, whoever asks here fails.
/// </summary>
public static class NgSpice
{
    /// <summary>Runs a script of decks or control commands.</summary>
    /// <param name="path">The file.</param>
    /// <returns>All that it printed.</returns>
    /// <exception cref="InvalidOperationException">ngspice is not installed.</exception>
    public static string Run(string path)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", path]) { RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.Result;
        }
        catch (Win32Exception missing)
        {
            throw new InvalidOperationException(ExternalTool.NgSpice.Reason, missing);
        }
    }

    /// <summary>Follows a circuit in time from no voltage anywhere.</summary>
    /// <param name="deck">Its elements, one a line.</param>
    /// <param name="endS">How long, s.</param>
    /// <param name="longestStepS">The longest step that it may take, s.</param>
    /// <param name="nodes">The nodes that are asked for.</param>
    /// <returns>For each node its voltage over time.</returns>
    /// <exception cref="InvalidOperationException">ngspice is not installed, or made nothing of the deck.</exception>
    public static IReadOnlyList<SpiceCurve> Transient(string deck, double endS, double longestStepS, params IReadOnlyList<string> nodes)
    {
        string folder = Directory.CreateTempSubdirectory("ngspice-").FullName;
        try
        {
            string path = Path.Combine(folder, "deck.cir");
            string data = Path.Combine(folder, "curves.data");
            string asked = string.Join(' ', nodes.Select(node => $"v({node})"));
            string ends = endS.ToString("R", CultureInfo.InvariantCulture);
            string step = longestStepS.ToString("R", CultureInfo.InvariantCulture);
            File.WriteAllText(path, $"* deck\n{deck}.options reltol=1e-6 abstol=1e-12 vntol=1e-9 chgtol=1e-14\n.tran {step} {ends} 0 {step} uic\n.control\nset numdgts=12\nset wr_singlescale\nrun\nwrdata {data} {asked}\n.endc\n.end\n");
            string output = Run(path);
            if (!File.Exists(data))
                throw new InvalidOperationException($"ngspice wrote no curves:\n{output}\nof the deck:\n{deck}");
            return Curves(File.ReadAllLines(data), nodes.Count, endS, output);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static SpiceCurve[] Curves(IEnumerable<string> lines, int nodes, double endS, string output)
    {
        double[][] rows = [.. lines.Select(Numbers).Where(row => row.Length == nodes + 1)];
        double[] times = [.. rows.Select(row => row[0])];
        if (times.Length == 0 || times[^1] < endS * (1 - 1e-9))
            throw new InvalidOperationException($"ngspice did not reach {endS} s:\n{output}");
        return [.. Enumerable.Range(1, nodes).Select(node => new SpiceCurve(times, [.. rows.Select(row => row[node])]))];
    }

    private static double[] Numbers(string line) =>
        [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => double.Parse(word, CultureInfo.InvariantCulture))];
}
