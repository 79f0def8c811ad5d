using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Analysis.Wiring;

/// <summary>Alarms that drive the outputs alike and so look alike to the supervisor.</summary>
/// <param name="Conditions">The alarms.</param>
/// <param name="Rows">Their rows, once.</param>
public sealed record WiringGroup(IReadOnlyList<WiringCondition> Conditions, IReadOnlyList<WiringRow> Rows)
{
    /// <summary>The alarms by name.</summary>
    public string Names => string.Join(", ", Conditions.Select(condition => condition.Name));

    /// <summary>The groups of a matrix, in order of its alarms.</summary>
    public static IReadOnlyList<WiringGroup> Of(WiringMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        return
        [
            .. matrix.Conditions.GroupBy(condition => condition.Pattern).Select(alike =>
                new WiringGroup([.. alike], [.. matrix.Rows.Where(row => ReferenceEquals(row.Condition, alike.First()))])),
        ];
    }
}
