using System.Collections.Generic;
using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>Compares which alarm came first.</summary>
/// <param name="specification">The specification.</param>
/// <param name="anyOfOneScan">Whether any of the alarms raised in one scan may be the first.</param>
internal sealed class FirstUpComparison(LubricationSpecification specification, bool anyOfOneScan)
{
    private readonly HashSet<int> _may = [];

    /// <summary>Which alarms may be first up is settled in the scan in which the first is raised.</summary>
    internal string? Compare(int core, AlarmId? specified)
    {
        int spec = CoreNumbers.NumberOf(specified);
        if (!_may.Contains(spec) || specification.MarkedFirstUp)
        {
            _may.Clear();
            _may.Add(spec);
            foreach (AlarmRule rule in anyOfOneScan && spec >= 0 ? AlarmTable.All : [])
            {
                if (((specification.Raised >> (int)rule.Id) & 1) != 0)
                    _may.Add(CoreNumbers.NumberOf(rule.Id));
            }
        }

        if (!_may.Contains(core))
            return $"first up: core {CoreNumbers.NameOf(core)}, specification {CoreNumbers.NameOf(spec)}";
        _may.RemoveWhere(number => number != core && number != spec);
        return null;
    }
}
