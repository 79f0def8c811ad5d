using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Sensors;

/// <summary>What a sensor loop may not be.</summary>
public static class SensorLoopCheck
{
    /// <summary>Looks a description through.</summary>
    /// <returns>What was found; paths begin with <c>sensor</c>. None where all is well.</returns>
    public static IReadOnlyList<PlantFinding> Check(SensorLoopDescription loop)
    {
        ArgumentNullException.ThrowIfNull(loop);
        var findings = new Findings();
        SensorLoopFields.All.Check(findings, "sensor", loop);
        return findings.All;
    }

    internal static void Refuse(SensorLoopDescription loop)
    {
        if (Check(loop).FirstOrDefault(finding => finding.IsRefusal) is { } first)
            throw new ArgumentException(first.ToString(), nameof(loop));
    }
}
