using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>A rule that looks at the types that code names. One member naming the same thing often is reported once, at its first place.</summary>
public abstract class MentionRule : IFirmwareRule
{
    /// <inheritdoc/>
    public virtual IEnumerable<Finding> Check(ModuleDefinition module) => Mention.AllIn(module)
        .Select(mention => (mention, judged: Judge(mention.Type)))
        .Where(pair => pair.judged != null)
        .Select(pair => pair.mention.Report(pair.judged!.Value.Found, pair.judged.Value.Remedy))
        .DistinctBy(finding => (finding.Type, finding.Member, finding.Found));

    /// <summary>What is wrong with a type and what to use instead, or null.</summary>
    protected abstract (string Found, string Remedy)? Judge(TypeReference type);
}
