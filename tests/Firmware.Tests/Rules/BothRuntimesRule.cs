using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Firmware.Tests.Reading;
using Mono.Cecil;

namespace LubeController.Firmware.Tests.Rules;

/// <summary>
/// Members of the core library that only one of the two runtimes has. The desktop is asked through its own mscorlib,
/// which forwards to where the types live now, as it does when the DLL is loaded.
/// </summary>
/// <param name="microcontroller">What the microcontroller has.</param>
/// <param name="desktop">What the desktop has.</param>
public sealed class BothRuntimesRule(MemberCatalogue microcontroller, MemberCatalogue desktop) : IFirmwareRule
{
    // Seen from inside its own assembly it does no harm; seen from outside, another rule refuses it.
    private const string InitModifier = "System.Runtime.CompilerServices.IsExternalInit";

    /// <inheritdoc/>
    public IEnumerable<Finding> Check(ModuleDefinition module)
    {
        var seen = new HashSet<string>();
        IEnumerable<Finding> mentioned = Mention.AllIn(module)
            .SelectMany(mention => Judge(mention.Type, mention.Report, seen));
        IEnumerable<Finding> used = Il.Instructions(module)
            .Where(at => at.Instruction.Operand is MethodReference or FieldReference)
            .SelectMany(at => Judge((MemberReference)at.Instruction.Operand, (found, remedy) => Finding.At(at.Method, at.Instruction, found, remedy), seen));
        IEnumerable<Finding> rest = module.GetTypeReferences().Concat(module.GetMemberReferences())
            .Where(member => !seen.Contains(member.FullName))
            .SelectMany(member => Judge(member, (found, remedy) => Finding.In(module, found, remedy), seen));

        // The rest, attributes among it, is what no code mentions, so the others must have been through.
        return mentioned.Concat(used).DistinctBy(finding => (finding.Type, finding.Member, finding.Found)).ToList().Concat(rest.ToList());
    }

    private IEnumerable<Finding> Judge(MemberReference member, Func<string, string, Finding> report, HashSet<string> seen)
    {
        if (member is TypeSpecification or GenericParameter or IMemberDefinition || member.FullName == InitModifier)
            yield break;
        if (!MemberCatalogue.IsOfCoreLibrary(member))
            yield break;
        seen.Add(member.FullName);
        if (!microcontroller.Has(member))
            yield return report(member.FullName + " is not on the microcontroller", "Use what both runtimes have");
        if (!desktop.Has(member))
            yield return report(member.FullName + " is not on the desktop", "Use what both runtimes have");
    }
}
