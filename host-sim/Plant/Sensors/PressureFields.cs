using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Sensors;

/// <summary>The fields of pressure switch, transmitter and gauge.</summary>
public static class PressureFields
{
    private static readonly IReadOnlyList<Choice<LinePlace>> Places = [new("pump", LinePlace.Pump), new("end", LinePlace.End)];

    private static readonly NumberField<PressureSwitchDescription> Reset = new("reset", "It releases at and below this pressure.", Measure.Pressure, "bar", 0, 1e8, p => p.ResetPa, (p, v) => p with { ResetPa = v }) { Required = true };

    private static readonly NumberField<PressureTransmitterDescription> LeastVoltage = new("least-voltage", "Voltage that it needs at its terminals, below the supply.", Measure.Voltage, "V", 0.1, 48, t => t.Loop.LeastVoltageV, (t, v) => t with { Loop = t.Loop with { LeastVoltageV = v } });

    /// <summary>The pressure at which the switch trips.</summary>
    internal static NumberField<PressureSwitchDescription> Trip { get; } = new("trip", "It is actuated at and above this pressure.", Measure.Pressure, "bar", 0, 1e8, p => p.TripPa, (p, v) => p with { TripPa = v }) { Required = true };

    /// <summary>The pressure switch.</summary>
    public static FieldSet<PressureSwitchDescription> Switch { get; } = new(
        "a pressure switch",
        new PressureSwitchDescription { TripPa = double.NaN, ResetPa = double.NaN },
        Trip,
        Reset,
        new ChoiceField<PressureSwitchDescription, LinePlace>("place", "At the pump's outlet, or at the end of the line.", Places, p => p.Place, (p, v) => p with { Place = v }),
        new ChoiceField<PressureSwitchDescription, SwitchContact>("contact", "", ContactWords.Switches, p => p.Contact, (p, v) => p with { Contact = v }))
    {
        Rules =
        [
            new(Trip, p => p.TripPa > 0, p => "above 0 and at most 1E+08 Pa"),
            new(Reset, p => p.ResetPa < p.TripPa, p => $"0 up to, not including, {Findings.Show(p.TripPa)} Pa (the trip pressure)"),
        ],
    };

    /// <summary>The pressure gauge.</summary>
    public static FieldSet<PressureTransmitterDescription> Gauge { get; } = new("a pressure gauge", new PressureTransmitterDescription(), Reading());

    /// <summary>The pressure transmitter.</summary>
    public static FieldSet<PressureTransmitterDescription> Transmitter { get; } = new(
        "a pressure transmitter",
        new PressureTransmitterDescription(),
        [
            .. Reading(),
            new NumberField<PressureTransmitterDescription>("supply", "Supply of its 4-20 mA loop.", Measure.Voltage, "V", 1, 48, t => t.Loop.SupplyV, (t, v) => t with { Loop = t.Loop with { SupplyV = v } }),
            LeastVoltage,
            new NumberField<PressureTransmitterDescription>("loop-resistance", "Of wires and input together.", Measure.Resistance, "ohm", 1, 10_000, t => t.Loop.LoopOhms, (t, v) => t with { Loop = t.Loop with { LoopOhms = v } }),
        ])
    {
        Rules = [new(LeastVoltage, t => t.Loop.LeastVoltageV <= t.Loop.SupplyV - 0.1, t => $"0.1 to {Findings.Show(t.Loop.SupplyV - 0.1)} V (below the supply)")],
    };

    private static IReadOnlyList<Field<PressureTransmitterDescription>> Reading() =>
    [
        new NumberField<PressureTransmitterDescription>("range", "The greatest pressure that it reads; a transmitter's 20 mA.", Measure.Pressure, "bar", 1e5, 1e8, t => t.RangePa, (t, v) => t with { RangePa = v }),
        new NumberField<PressureTransmitterDescription>("lag", "Time constant of its lag.", Measure.Time, "s", 0, 60, t => t.LagS, (t, v) => t with { LagS = v }),
        new ChoiceField<PressureTransmitterDescription, LinePlace>("place", "At the pump's outlet, or at the end of the line.", Places, t => t.Place, (t, v) => t with { Place = v }),
    ];
}
