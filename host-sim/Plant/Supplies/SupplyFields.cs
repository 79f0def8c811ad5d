using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Supplies;

/// <summary>The fields of the control supply.</summary>
public static class SupplyFields
{
    private static readonly NumberField<SupplyDescription> StartsAt = new("starts-at", "The logic powers up at and above this; in proportion to the voltage if only that is written.", Measure.Voltage, "V", 0.5, 48, s => s.LogicOnV, (s, v) => s with { LogicOnV = v });
    private static readonly NumberField<SupplyDescription> StopsBelow = new("stops-below", "It stops below this; in proportion to the voltage if only that is written.", Measure.Voltage, "V", 0.1, 48, s => s.LogicOffV, (s, v) => s with { LogicOffV = v });

    /// <summary>All of them.</summary>
    public static FieldSet<SupplyDescription> All { get; } = new(
        "a control supply",
        new SupplyDescription(),
        // Where only the voltage is written the limits keep their proportion to it.
        new NumberField<SupplyDescription>("voltage", "Nominal voltage.", Measure.Voltage, "V", 1, 48, s => s.NominalV, (s, v) => s with { NominalV = v, LogicOnV = s.LogicOnV / s.NominalV * v, LogicOffV = s.LogicOffV / s.NominalV * v }),
        StartsAt,
        StopsBelow,
        new MicrosecondsField<SupplyDescription>("hold-up", "How long it works on without enough voltage.", "s", 0, 10, s => s.HoldUpUs, (s, v) => s with { HoldUpUs = v }))
    {
        Rules =
        [
            new(StartsAt, s => s.LogicOnV <= s.NominalV, s => $"0.5 to {Findings.Show(s.NominalV)} V (the nominal voltage)"),
            new(StopsBelow, s => s.LogicOffV <= s.LogicOnV - 0.1, s => $"0.1 to {Findings.Show(s.LogicOnV - 0.1)} V (below the voltage at which the logic starts)"),
        ],
    };
}
