using System;
using System.Collections.Generic;
using System.Globalization;
using CsCheck;

namespace LubeController.Core.Tests;

/// <summary>
/// Runs a property over the same cases on every run: one seed, one sequence. A case that fails is handed to CsCheck,
/// which shrinks it and prints the seed that repeats it. The variable LUBE_PROPERTY_PERCENT scales the number of cases,
/// LUBE_PROPERTY_SEED draws other ones, and LUBE_PROPERTY_SHRINK=0 leaves a failed case as it is.
/// </summary>
internal static class Property
{
    public static void ForAll<T>(Gen<T> cases, int count, Action<T> holds)
    {
        ulong seed = (ulong)Number("LUBE_PROPERTY_SEED", 20_251_125);
        for (int index = 0; index < Math.Max(1, Scaled(count)); index++)
        {
            var pcg = new PCG((uint)index + 1, seed);
            string text = pcg.ToString();
            T drawn = cases.Generate(pcg, null, out _);
            try
            {
                holds(drawn);
            }
            catch (Exception) when (Number("LUBE_PROPERTY_SHRINK", 1) != 0)
            {
                cases.Sample(holds, seed: text, iter: 3_000, threads: 1);
                throw;
            }
        }
    }

    /// <summary>A number of cases, or of what they are asked to come by, as LUBE_PROPERTY_PERCENT scales it.</summary>
    public static int Scaled(int count) => (int)((long)count * Number("LUBE_PROPERTY_PERCENT", 100) / 100);

    /// <summary>The first cases of the sequence, as many whatever the scale.</summary>
    public static IEnumerable<T> Draw<T>(Gen<T> cases, int count)
    {
        for (int index = 0; index < count; index++)
            yield return cases.Generate(new PCG((uint)index + 1, 20_251_125), null, out _);
    }

    private static int Number(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int number) ? number : otherwise;
}
