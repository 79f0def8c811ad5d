using LubeController.Plant.Divider;
using LubeController.Plant.Fields;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Description;

/// <summary>The fields of a plant.</summary>
public static class PlantFields
{
    internal static GroupField<PlantDescription, PumpDescription> Pump { get; } = new("pump", "", PumpFields.All, p => p.Pump, (p, v) => p with { Pump = v }) { Required = true, Remedy = "write it with kind and, for a constant-flow pump, flow" };

    internal static GroupField<PlantDescription, ReliefDescription> Relief { get; } = new("relief-valve", "", ValveFields.Relief, p => p.Relief, (p, v) => p with { Relief = v }) { Required = true };

    internal static GroupField<PlantDescription, VentValveDescription> VentValve { get; } = new("vent-valve", "The valve that opens a single-line system's line to the reservoir.", ValveFields.Vent, p => p.VentValve, (p, v) => p with { VentValve = v });

    internal static GroupField<PlantDescription, DividerDescription> Divider { get; } = new("divider", "The main divider; absent where injectors are written.", DividerFields.All, p => p.Divider.Sections.Count > 0 || p.Injectors.Count == 0 ? p.Divider : null, (p, v) => p with { Divider = v })
    {
        RequiredWhere = source => !source.Has(InjectorsKey),
        Remedy = "write it with its sections, or injectors with outlets",
    };

    internal static ListField<PlantDescription, SecondaryDividerDescription> Secondaries { get; } = new("secondary-dividers", "Dividers fed by outlets of the main one, or of a secondary one before it in the list.", DividerFields.Secondary, p => p.Secondaries, (p, v) => p with { Secondaries = v }) { Most = 16 };

    internal static ListField<PlantDescription, InjectorDescription> Injectors { get; } = new(InjectorsKey, "Injectors of a single-line parallel system, in place of a divider.", InjectorFields.All, p => p.Injectors, (p, v) => p with { Injectors = v }) { Most = 64 };

    internal static OutletsField Outlets { get; } = new() { Absent = "one for each group of connected ports, named for its first port", Remedy = "write each outlet that an injector feeds, with its name" };

    internal static ListField<PlantDescription, CycleSwitchDescription> CycleSwitches { get; } = new("cycle-switches", "", CycleSwitchFields.All, p => p.CycleSwitches, (p, v) => p with { CycleSwitches = v }) { Most = 64 };

    internal static GroupField<PlantDescription, PressureSwitchDescription> PressureSwitch { get; } = new("pressure-switch", "", PressureFields.Switch, p => p.PressureSwitch, (p, v) => p with { PressureSwitch = v });

    internal const string InjectorsKey = "injectors";

    /// <summary>All of them.</summary>
    public static FieldSet<PlantDescription> All { get; } = new(
        "a plant file",
        new PlantDescription { Name = "", Lubricant = null!, Reservoir = null!, Pump = null!, Line = null!, Relief = null!, Divider = DividerDescription.None, Outlets = [] },
        new TextField<PlantDescription>("plant", "What it lubricates, for reports.", TextForm.Free, "", p => p.Name, (p, v) => p with { Name = v }) { Required = true, Remedy = "write what it lubricates, for instance 'salt works, brine pump'" },
        new GroupField<PlantDescription, LubricantDescription>("lubricant", "The lubricant file, and what differs from it.", LubricantFields.All, p => p.Lubricant, (p, v) => p with { Lubricant = v }) { Required = true },
        new NumberField<PlantDescription>("temperature", "Lubricant temperature at the start.", Measure.Temperature, "degC", 200, 500, p => p.TemperatureK, (p, v) => p with { TemperatureK = v }),
        new GroupField<PlantDescription, ReservoirDescription>("reservoir", "", ReservoirFields.All, p => p.Reservoir, (p, v) => p with { Reservoir = v }) { Required = true },
        Pump,
        new GroupField<PlantDescription, LineDescription>("line", "", LineFields.All, p => p.Line, (p, v) => p with { Line = v }) { Required = true },
        Relief,
        VentValve,
        Divider,
        Secondaries,
        Injectors,
        Outlets,
        CycleSwitches,
        PressureSwitch,
        new GroupField<PlantDescription, PressureTransmitterDescription>("pressure-transmitter", "yes, no, or what differs from 0 to 400 bar without lag at the pump.", PressureFields.Transmitter, p => p.Transmitter, (p, v) => p with { Transmitter = v }) { MayBeYesOrNo = true, Absent = "no" },
        new GroupField<PlantDescription, PressureTransmitterDescription>("pressure-gauge", "What a person reads: yes, no, or what differs from 0 to 400 bar without lag at the pump.", PressureFields.Gauge, p => p.Gauge, (p, v) => p with { Gauge = v }) { MayBeYesOrNo = true, Absent = "no" },
        new GroupField<PlantDescription, ShaftDescription>("shaft", "", ShaftFields.All, p => p.Shaft, (p, v) => p with { Shaft = v }),
        new GroupField<PlantDescription, SupplyDescription>("control-supply", "Supply of the logic and the cycle switches.", SupplyFields.All, p => p.ControlSupply, (p, v) => p with { ControlSupply = v }),
        new GroupField<PlantDescription, SupervisoryWiringDescription>("wiring", "The circuit between output contacts and the inputs of a supervisory system. Two parts meet where they name the same terminal.", WiringFields.All, p => p.Wiring, (p, v) => p with { Wiring = v }))
    {
        Whole = PlantCheck.Add,
    };
}
