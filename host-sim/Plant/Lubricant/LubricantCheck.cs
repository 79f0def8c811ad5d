using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Lubricant;

/// <summary>What a description of a lubricant may not hold.</summary>
public static class LubricantCheck
{
    /// <summary>All findings; paths are those of a lubricant file. Empty: nothing to say.</summary>
    public static IReadOnlyList<PlantFinding> Of(LubricantDescription lubricant)
    {
        ArgumentNullException.ThrowIfNull(lubricant);
        return LubricantFields.All.FindingsOf(lubricant);
    }
}
