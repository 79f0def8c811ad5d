using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant;

/// <summary>
/// One lubrication system: reservoir, pump, line, relief valve, dividers or injectors, sensors, shaft. The network of
/// volumes and flows is carried from one instant to the next by steps of its own choice, each of which ends where something
/// happens (a piston arrives, a switch trips, a valve opens) or where its error would grow too large. Within a step every
/// quantity moves in a straight line, so the state is kept as of its start and nothing is stored when time is only looked
/// at: advancing in many cuts or in one leaves the same bits.
/// </summary>
/// <remarks>
/// This part holds construction and commands; <c>.Time</c> time and events, <c>.Steps</c> the steps of the network,
/// <c>.Values</c> what can be read, <c>.Faults</c> its parts as faults see them, <c>.Wiring</c> the circuit to a supervisory system.
/// </remarks>
public sealed partial class LubricationSystem : FaultedPlant
{
    // Relief valve, vent valve, check valve, leak, burst.
    private const int OtherBranches = 5;

    private readonly IReadOnlyList<SectionDescription> _sections;
    private readonly PumpUnit _pump;
    private readonly LubricantReservoir _reservoir;
    private readonly LineLayout _layout;
    private readonly Network _network;
    private readonly LineAir _air;
    private readonly LineDrains _drains;
    private readonly ReliefValve _relief;
    private readonly VentValve _vent;
    private readonly OutletLine[] _outlets;
    private readonly ProgressiveDivider[] _dividers;
    private readonly Injector[] _injectors;
    private readonly CycleSwitch[] _switches;
    private readonly LaggedPressure _transmitter;
    private readonly LaggedPressure? _gauge;
    private readonly LubricantProperties _lubricant;
    private readonly LubricantTemperature _temperature;
    private readonly PressureSwitch? _pressureSwitch;
    private readonly Shaft? _shaft;
    private readonly MotorProtection? _protection;
    private readonly double _contentAtStart;
    private readonly double _errorBoundM3;
    private readonly double _bendBoundPa;
    private readonly double _longestStepS;
    private Sum _pumped;
    private Sum _ingested;
    private Sum _relieved;
    private Sum _returned;
    private Sum _leaked;
    private Sum _airOut;

    /// <summary>Builds the system as described, at time 0, pump off, line at atmospheric pressure.</summary>
    /// <param name="description">The plant.</param>
    /// <param name="seed">Seeds whatever is irregular; the same seed gives the same run.</param>
    /// <param name="stepScale">
    /// Scales every step of the network, 1e-4 to 1: the error bound falls with its square. For checks of the steps themselves.
    /// </param>
    /// <param name="longestStepS">The longest step of the network, s, above 0. For the same checks.</param>
    /// <exception cref="ArgumentException"><see cref="PlantCheck"/> refuses the description; the message holds every refusal.</exception>
    public LubricationSystem(PlantDescription description, ulong seed, double stepScale = 1, double longestStepS = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(description);
        IReadOnlyList<PlantFinding> refusals = PlantCheck.Refusals(description);
        if (refusals.Count > 0)
            throw new ArgumentException(string.Join(Environment.NewLine, refusals), nameof(description));
        Description = description;
        _sections = description.AllSections;
        Seed = seed;
        _temperature = new LubricantTemperature { SetK = description.TemperatureK };
        _lubricant = new LubricantProperties(description.Lubricant, description.TemperatureK);
        _pump = new PumpUnit(description.Pump, description.Relief.OpeningPressurePa);
        _reservoir = new LubricantReservoir(description.Reservoir);
        _layout = new LineLayout(description.Line, description.Secondaries);
        _network = new Network(_layout.Volumes, _layout.Compliances, _layout.Airs(description.Line.AirM3, description.Reservoir.EntrainedAir), description.Line.GasExponent);
        _air = new LineAir(_network);
        _relief = new ReliefValve(description.Relief);
        _vent = new VentValve(description.VentValve);
        _drains = new LineDrains(_vent, _layout.End);
        _outlets = MakeOutlets(description, _layout);
        _switches = MakeSwitches(description, seed);
        _dividers = MakeDividers(description, _layout, _outlets, _switches);
        _injectors = MakeInjectors(description, _layout, _outlets);
        _transmitter = new LaggedPressure(description.Transmitter ?? new PressureTransmitterDescription(), NodeAt(description.Transmitter?.Place ?? LinePlace.Pump));
        _gauge = description.Gauge is { } gauge ? new LaggedPressure(gauge, NodeAt(gauge.Place)) : null;
        _pressureSwitch = description.PressureSwitch is { } pressure ? new PressureSwitch(pressure) : null;
        _shaft = description.Shaft is { } shaft ? new Shaft(shaft) : null;
        _protection = description.Pump.OverloadTripS is { } trip ? new MotorProtection(trip, description.Pump.OverloadCoolS) : null;
        _supply = new ControlSupply(description.ControlSupply);
        _wiring = description.Wiring is { } wiring ? new FaultedWiring(wiring, seed) : null;
        _contentAtStart = _reservoir.ContentM3;
        _network.Reserve(_layout.Tables.Length + OtherBranches + (2 * SectionCount) + _injectors.Length);
        _errorBoundM3 = ErrorPart * stepScale * stepScale * SmallestMeasure(description);
        _bendBoundPa = BendPa * stepScale * stepScale;
        _longestStepS = longestStepS;
        FollowLubricant();
        ScheduleToggle();
        Settle(PlantQuantities.None);
    }

    /// <summary>What the system was built from.</summary>
    public PlantDescription Description { get; }

    /// <summary>The seed that it was built with.</summary>
    public ulong Seed { get; }

    /// <summary>Who is told of events, or null.</summary>
    public IPlantObserver? Observer { get; set; }

    /// <summary>Whether the motor's contact is driven closed. What the motor does is <see cref="MotorTurns"/>.</summary>
    public bool PumpContact => _pump.Contact;

    /// <summary>Temperature of the lubricant, K.</summary>
    public double TemperatureK => _temperature.NowK;

    /// <summary>Whether somebody measures the lubricant's temperature, so that another one makes a difference even where nothing flows.</summary>
    public bool TemperatureIsRead
    {
        get => _temperature.IsRead;
        set => _temperature.IsRead = value;
    }

    /// <summary>Whether the vent valve's coil is driven.</summary>
    public bool VentCoil => _vent.Coil;

    /// <summary>Drives the vent valve's coil, or lets go of it, now. Without a vent valve nothing happens.</summary>
    public void SetVentValve(bool driven)
    {
        if (driven == _vent.Coil)
            return;
        Anchor();
        _vent.Coil = driven;
        Settle(PlantQuantities.None);
    }

    /// <summary>Closes or opens the motor's contact, now. Nothing happens if it is so already.</summary>
    public void SetPumpContact(bool closed)
    {
        if (closed == _pump.Contact)
            return;
        Anchor();
        _pump.Contact = closed;
        Settle(PlantQuantities.None);
    }

    /// <summary>Sets the temperature of the lubricant, K, 200 to 500, now.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It lies outside.</exception>
    public void SetTemperature(double temperatureK)
    {
        if (!(temperatureK is >= 200 and <= 500))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK, "Accepted is 200 to 500 K.");
        if (temperatureK == _temperature.SetK)
            return;
        Anchor();
        _temperature.SetK = temperatureK;
        FollowLubricant();
        Settle(PlantQuantities.None);
    }

    /// <summary>Moves the shaft to a speed, now: at once, or in a straight ramp.</summary>
    /// <param name="revPerS">The speed to reach, revolutions per second, 0 to 1000.</param>
    /// <param name="rampS">Time to reach it, s, 0 to 1e6.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside.</exception>
    /// <exception cref="InvalidOperationException">The plant has no shaft.</exception>
    public void SetShaftSpeed(double revPerS, double rampS = 0)
    {
        if (!(revPerS is >= 0 and <= 1000))
            throw new ArgumentOutOfRangeException(nameof(revPerS), revPerS, "Accepted is 0 to 1000 rev/s.");
        if (!(rampS is >= 0 and <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(rampS), rampS, "Accepted is 0 to 1e6 s.");
        TheShaft.SetSpeed(NowUs, revPerS, rampS);
    }

    /// <summary>Fills the reservoir, now, up to a content; less than it holds changes nothing.</summary>
    /// <param name="contentM3">The content to reach, m3, 0 to the reservoir's capacity.</param>
    /// <exception cref="ArgumentOutOfRangeException">It lies outside.</exception>
    public void Refill(double contentM3)
    {
        if (!(contentM3 >= 0 && contentM3 <= Description.Reservoir.CapacityM3))
            throw new ArgumentOutOfRangeException(nameof(contentM3), contentM3, $"Accepted is 0 to {Description.Reservoir.CapacityM3} m3.");
        if (contentM3 <= ReservoirContentM3)
            return;
        Anchor();
        _reservoir.Fill(contentM3);
        Settle(PlantQuantities.ReservoirContent);
    }

    private Shaft TheShaft => _shaft ?? throw new InvalidOperationException($"Plant '{Description.Name}' has no shaft: describe one.");

    private int NodeAt(LinePlace place) => place == LinePlace.Pump ? 0 : _layout.End;

    internal void FollowStrainer() => _layout.FollowLubricant(_lubricant);

    internal void FollowLubricant()
    {
        _lubricant.SetTemperature(Math.Clamp(TemperatureK, 200, 500));
        _layout.FollowLubricant(_lubricant);
        foreach (ProgressiveDivider divider in _dividers)
            divider.FollowLubricant(_lubricant);
        foreach (Injector injector in _injectors)
            injector.FollowLubricant(_lubricant);
    }

    private static double SmallestMeasure(PlantDescription plant)
    {
        double smallest = double.PositiveInfinity;
        foreach (SectionDescription section in plant.AllSections)
            smallest = Math.Min(smallest, section.VolumePerStrokeM3);
        foreach (InjectorDescription injector in plant.Injectors)
            smallest = Math.Min(smallest, injector.VolumeM3);
        return smallest;
    }

    private static OutletLine[] MakeOutlets(PlantDescription plant, LineLayout layout)
    {
        var outlets = new OutletLine[plant.Outlets.Count];
        for (int i = 0; i < outlets.Length; i++)
        {
            int node = -1;
            for (int s = 0; s < plant.Secondaries.Count; s++)
            {
                if (string.Equals(plant.Secondaries[s].FedBy, plant.Outlets[i].Name, StringComparison.Ordinal))
                    node = layout.MainNodes + s;
            }

            outlets[i] = new OutletLine(plant.Outlets[i], node);
        }

        return outlets;
    }

    private static CycleSwitch[] MakeSwitches(PlantDescription plant, ulong seed)
    {
        var switches = new CycleSwitch[plant.CycleSwitches.Count];
        var seeds = new SeededGenerator(seed);
        for (int s = 0; s < switches.Length; s++)
        {
            foreach (SectionDescription section in plant.AllSections)
            {
                if (string.Equals(section.Name, plant.CycleSwitches[s].Section, StringComparison.Ordinal))
                    switches[s] = new CycleSwitch(plant.CycleSwitches[s], section.VolumePerStrokeM3, section.InitialTravel * section.VolumePerStrokeM3, seeds.Next());
            }
        }

        return switches;
    }

    private static ProgressiveDivider[] MakeDividers(PlantDescription plant, LineLayout layout, OutletLine[] outlets, CycleSwitch[] switches)
    {
        if (plant.Divider.Sections.Count == 0)
            return [];
        var dividers = new ProgressiveDivider[1 + plant.Secondaries.Count];
        dividers[0] = new ProgressiveDivider(plant.Divider, 0, 0, layout.End, outlets, switches);
        for (int s = 0; s < plant.Secondaries.Count; s++)
        {
            int first = dividers[s].FirstSection + dividers[s].Sections;
            dividers[s + 1] = new ProgressiveDivider(plant.Secondaries[s].Divider, s + 1, first, layout.MainNodes + s, outlets, switches);
        }

        return dividers;
    }

    private Injector[] MakeInjectors(PlantDescription plant, LineLayout layout, OutletLine[] outlets)
    {
        var injectors = new Injector[plant.Injectors.Count];
        for (int i = 0; i < injectors.Length; i++)
        {
            int outlet = FindOutlet(plant.Injectors[i].Outlet);
            injectors[i] = new Injector(plant.Injectors[i], layout.SegmentEnd(plant.Injectors[i].Segment), outlets[outlet], outlet);
        }

        return injectors;
    }
}
