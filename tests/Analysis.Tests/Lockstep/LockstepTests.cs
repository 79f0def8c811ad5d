using System;
using System.Globalization;
using Xunit;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>Core and specification agree on random sequences. LUBE_PROPERTY_PERCENT scales how many, LUBE_PROPERTY_SEED draws others.</summary>
public sealed class LockstepTests
{
    internal const int Cases = 2_000;

    internal const ulong Seed = 20_251_126;

    [Fact]
    public void Core_and_specification_agree_on_random_sequences()
    {
        int cases = Math.Max(1, (int)((long)Cases * Number("LUBE_PROPERTY_PERCENT", 100) / 100));
        LockstepFinding? finding = LockstepCampaign.Find(
            Analysis.Lockstep.Lockstep.Run, cases, (ulong)Number("LUBE_PROPERTY_SEED", (int)Seed), Number("LUBE_PROPERTY_SHRINK", 1) != 0);

        Assert.True(finding is null, finding?.ToString());
    }

    private static int Number(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int number) ? number : otherwise;
}
