using System.Collections.Generic;
using LubeController.Plant.Divider;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Description;

/// <summary>
/// One lubrication system, in SI units: what stands on the bench before anything happens. Immutable.
/// <see cref="PlantCheck"/> says what a description may not hold.
/// </summary>
public sealed record PlantDescription
{
    /// <summary>Name for reports, not empty.</summary>
    public required string Name { get; init; }

    /// <summary>The lubricant.</summary>
    public required LubricantDescription Lubricant { get; init; }

    /// <summary>The reservoir and its level switches.</summary>
    public required ReservoirDescription Reservoir { get; init; }

    /// <summary>The pump.</summary>
    public required PumpDescription Pump { get; init; }

    /// <summary>The line from pump to divider.</summary>
    public required LineDescription Line { get; init; }

    /// <summary>The relief valve on the line.</summary>
    public required ReliefDescription Relief { get; init; }

    /// <summary>The divider.</summary>
    public required DividerDescription Divider { get; init; }

    /// <summary>The outlets: one for each group of connected ports (<see cref="PortGroups"/>).</summary>
    public required IReadOnlyList<OutletDescription> Outlets { get; init; }

    /// <summary>The cycle switches, none to 64.</summary>
    public IReadOnlyList<CycleSwitchDescription> CycleSwitches { get; init; } = [];

    /// <summary>The pressure switch, or null.</summary>
    public PressureSwitchDescription? PressureSwitch { get; init; }

    /// <summary>Whether the line pressure is measured by a transmitter.</summary>
    public bool HasPressureTransmitter { get; init; }

    /// <summary>That transmitter, where there is one.</summary>
    public PressureTransmitterDescription Transmitter { get; init; } = new();

    /// <summary>The pressure gauge that a person reads, or null.</summary>
    public PressureTransmitterDescription? Gauge { get; init; }

    /// <summary>Dividers fed by outlets of others, none to 16.</summary>
    public IReadOnlyList<SecondaryDividerDescription> Secondaries { get; init; } = [];

    /// <summary>Injectors on the line, none to 64; with them <see cref="Divider"/> is <see cref="DividerDescription.None"/>.</summary>
    public IReadOnlyList<InjectorDescription> Injectors { get; init; } = [];

    /// <summary>The vent valve, or null.</summary>
    public VentValveDescription? VentValve { get; init; }

    /// <summary>The machine's shaft, or null.</summary>
    public ShaftDescription? Shaft { get; init; }

    /// <summary>The supply of controller and cycle switches.</summary>
    public SupplyDescription ControlSupply { get; init; } = new();

    /// <summary>The circuit between output contacts and supervisory inputs, or null. Nothing hydraulic depends on it.</summary>
    public SupervisoryWiringDescription? Wiring { get; init; }

    /// <summary>Temperature of the lubricant at the start, K, 200 to 500. Default 293.15. Losses, slip and bypass follow it.</summary>
    public double TemperatureK { get; init; } = 293.15;

    /// <summary>The sections of all dividers: those of <see cref="Divider"/>, then of each secondary, in order.</summary>
    public IReadOnlyList<SectionDescription> AllSections
    {
        get
        {
            var all = new List<SectionDescription>(Divider.Sections);
            foreach (SecondaryDividerDescription secondary in Secondaries)
                all.AddRange(secondary.Divider.Sections);
            return all;
        }
    }
}
