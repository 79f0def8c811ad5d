using System;
using System.Globalization;
using CsCheck;

namespace LubeController.Core.Tests;

/// <summary>
/// Runs a property over the same cases on every run: one seed, one sequence. A case that fails is handed to CsCheck,
/// which shrinks it and prints the seed that repeats it. The variable LUBE_PROPERTY_RUNS multiplies the number of cases,
/// LUBE_PROPERTY_SEED draws other ones.
/// </summary>
internal static class Property
{
    public static void ForAll<T>(Gen<T> cases, int count, Action<T> holds)
    {
        int times = Number("LUBE_PROPERTY_RUNS", 1);
        ulong seed = (ulong)Number("LUBE_PROPERTY_SEED", 20_251_125);
        for (int index = 0; index < count * times; index++)
        {
            var pcg = new PCG((uint)index + 1, seed);
            string text = pcg.ToString();
            T drawn = cases.Generate(pcg, null, out _);
            try
            {
                holds(drawn);
            }
            catch (Exception)
            {
                cases.Sample(holds, seed: text, iter: 3_000, threads: 1);
                throw;
            }
        }
    }

    private static int Number(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int number) ? number : otherwise;
}
