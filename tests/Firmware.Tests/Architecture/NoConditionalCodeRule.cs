using System.Collections.Generic;
using System.Text.RegularExpressions;

namespace LubeController.Firmware.Tests.Architecture;

/// <summary>No <c>#if</c> under firmware/: what is tested is what is deployed.</summary>
public sealed partial class NoConditionalCodeRule : IArchitectureRule
{
    /// <inheritdoc/>
    public IEnumerable<string> Check(Repository repository)
    {
        foreach ((string path, string text) in repository.FirmwareSources)
        {
            foreach (Match match in Condition().Matches(text))
                yield return $"{path}: {match.Value.Trim()}; the same code must run on both sides, so choose by a setting or an interface";
        }
    }

    [GeneratedRegex(@"^[ \t]*#[ \t]*(if|elif)\b.*$", RegexOptions.Multiline)]
    private static partial Regex Condition();
}
