using System.Collections.Generic;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>One thing that keeps the rooms of the solution apart.</summary>
public interface IArchitectureRule
{
    /// <summary>What breaks the rule: each names the place, what was found, and what would be accepted.</summary>
    IEnumerable<string> Check(Repository repository);
}
