using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant;

/// <summary>A kind of part that faults can have: what a described plant calls them, and where they are in a running one.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Names">Their names in a plant; one empty name where there is nothing to choose, none where it has no such part.</param>
/// <param name="Find">The part of a name in a running plant.</param>
internal sealed record PlantPart(FaultPart Kind, Func<PlantDescription, IEnumerable<string>> Names, Func<LubricationSystem, string, object> Find)
{
    private static readonly CableCore[] Cores = Enum.GetValues<CableCore>();

    private static readonly Dictionary<FaultPart, PlantPart> All = new PlantPart[]
    {
        Row(OutletFaults.Outlet, plant => plant.Outlets.Select(outlet => outlet.Name), (system, name) => system.OutletOf(name)),
        Row(DividerFaults.Inlet, plant => Only(plant.Divider.Sections.Count > 0), (system, _) => system.Inlet),
        Row(DividerFaults.Piston, plant => plant.AllSections.Select(section => section.Name), (system, name) => system.PistonOf(name)),
        Row(InjectorFaults.Injector, plant => plant.Injectors.Select(injector => injector.Name), (system, name) => system.InjectorOf(name)),
        Row(PumpFaults.Pump, _ => Only(true), (system, _) => system.Pump),
        Row(ReservoirFaults.Content, _ => Only(true), (system, _) => system.Reservoir) with { Jumps = PlantQuantities.ReservoirContent },
        Row(ReservoirFaults.Suction, _ => Only(true), (system, _) => system.Reservoir),
        Row(LubricantFaults.Temperature, _ => Only(true), (system, _) => system.Temperature) with { Followed = system => system.FollowLubricant() },
        Row(LineFaults.AirPart, _ => Only(true), (system, _) => system.Air) with { Jumps = PlantQuantities.LinePressure | PlantQuantities.EndPressure },
        Row(LineFaults.Drains, _ => Only(true), (system, _) => system.Drains),
        Row(LineFaults.Strainer, plant => Only(plant.Line.StrainerLossPa != 0), (system, _) => system.Layout) with { Followed = system => system.FollowStrainer() },
        Row(ValveFaults.CheckValve, _ => Only(true), (system, _) => system.Drains),
        Row(ValveFaults.ReliefValve, _ => Only(true), (system, _) => system.Relief),
        Row(ValveFaults.VentValve, plant => Only(plant.VentValve != null), (system, _) => system.Vent),
        Row(LevelSwitchFaults.Switch, _ => ["low", "empty"], (system, name) => name == "low" ? system.Reservoir.Low : system.Reservoir.Empty),
        Row(PressureSwitchFaults.Switch, plant => Only(plant.PressureSwitch != null), (system, _) => system.PressureSwitch!),
        Row(CycleSwitchFaults.Switch, plant => plant.CycleSwitches.Select(cycle => cycle.Name), (system, name) => system.CycleSwitchOf(name)),
        Row(ShaftFaults.Switch, plant => Only(plant.Shaft != null), (system, _) => system.Shaft!),
        Row(PressureReadingFaults.Gauge, plant => Only(plant.Gauge != null), (system, _) => system.Gauge!) with { ShowsAtOnce = true },
        Row(PressureReadingFaults.Transmitter, plant => Only(plant.Transmitter is not null), (system, _) => system.Transmitter) with { ShowsAtOnce = true },
        Row(SupplyFaults.Supply, _ => Only(true), (system, _) => system.FeedingSupply)
            with { ShowsAtOnce = true, Jumps = PlantQuantities.ControlSupply, Followed = system => system.FeedFromSupply() },
        Sensed(SensorLoopFaults.Sensor, [""]),
        Sensed(SensorLoopFaults.Core, Cores.Select(core => "+" + CoreColours.ColourOf(core))),
        Sensed(SensorLoopFaults.CorePair, Cores.SelectMany((core, index) => Cores.Skip(index + 1).Select(other => $"+{CoreColours.ColourOf(core)}+{CoreColours.ColourOf(other)}"))),
    }.Concat(WiringFaults.Parts.Select(Wired)).ToDictionary(part => part.Kind);

    /// <summary>What jumps when such a part changes.</summary>
    public PlantQuantities Jumps { get; init; }

    /// <summary>Whether what it shows jumps with it.</summary>
    public bool ShowsAtOnce { get; init; }

    /// <summary>What follows it at once, or null.</summary>
    public Action<LubricationSystem>? Followed { get; init; }

    /// <summary>A kind of part of the plant, or null where it is none.</summary>
    public static PlantPart? Of(FaultPart kind) => All.GetValueOrDefault(kind);

    private static PlantPart Row<TPart>(FaultPart<TPart> kind, Func<PlantDescription, IEnumerable<string>> names, Func<LubricationSystem, string, TPart> find)
        where TPart : class => new(kind, names, find);

    private static IEnumerable<string> Only(bool there) => there ? [""] : [];

    private static PlantPart Wired(WiringPart kind) =>
        Row(kind, plant => plant.Wiring is { } wiring ? kind.NamesIn(wiring) : [], (system, _) => system.FaultedWiring!);

    /// <summary>The switch's name, alone or with colours of cores behind it.</summary>
    private static PlantPart Sensed(FaultPart<SensedSwitch> kind, IEnumerable<string> cores) => Row(
        kind,
        plant => plant.CycleSwitches.Where(cycle => cycle.Sensor != null).SelectMany(cycle => cores.Select(suffix => cycle.Name + suffix)),
        (system, name) =>
        {
            string suffix = cores.First(suffix => name.EndsWith(suffix, StringComparison.Ordinal) && system.FindCycleSwitch(name[..^suffix.Length]) >= 0);
            string[] colours = suffix.Split('+');
            return new SensedSwitch(system.CycleSwitchOf(name[..^suffix.Length]), CoreOf(colours[Math.Min(1, colours.Length - 1)]), CoreOf(colours[^1]));
        });

    private static CableCore CoreOf(string colour) => Array.Find(Cores, core => CoreColours.ColourOf(core) == colour);
}
