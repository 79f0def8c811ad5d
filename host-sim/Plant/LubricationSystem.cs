using System;
using System.Collections.Generic;
using LubeController.Plant.Description;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Sensing;

namespace LubeController.Plant;

/// <summary>
/// One lubrication system: reservoir, pump, line, relief valve, divider, sensors, shaft. Between events every quantity
/// moves in a straight line, so the state is kept as of the last event and nothing is stored when time is only looked at:
/// advancing in many steps or in one leaves the same bits.
/// </summary>
/// <remarks>
/// Strokes are quasi-static: a piston takes the arriving flow while the line stands at what it needs (breakaway plus
/// back-pressure); above that it takes the stroke limit from what is stored. Flow losses are not modelled.
/// This part holds construction and commands; <c>.Time</c> the events, <c>.Values</c> what can be read, <c>.Faults</c> the
/// faults.
/// </remarks>
public sealed partial class LubricationSystem
{
    private readonly Pump _pump;
    private readonly Reservoir _reservoir;
    private readonly Line _line;
    private readonly Divider _divider;
    private readonly PressureSwitch? _pressureSwitch;
    private readonly Shaft? _shaft;
    private readonly double _storedAtStart;
    private readonly double _contentAtStart;
    private double _leakM3PerS;
    private double _reliefPa;
    private Sum _pumped;
    private Sum _relieved;
    private Sum _leaked;
    private double _bled;
    private double _removed;
    private double _refilled;

    /// <summary>Builds the system as described, at time 0, pump off, line at atmospheric pressure.</summary>
    /// <param name="description">The plant.</param>
    /// <param name="seed">Seeds whatever is irregular; the same seed gives the same run.</param>
    /// <exception cref="ArgumentException"><see cref="PlantCheck"/> refuses the description; the message holds every refusal.</exception>
    public LubricationSystem(PlantDescription description, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(description);
        IReadOnlyList<PlantFinding> refusals = PlantCheck.Refusals(description);
        if (refusals.Count > 0)
            throw new ArgumentException(string.Join(Environment.NewLine, refusals), nameof(description));
        Description = description;
        Seed = seed;
        TemperatureK = description.TemperatureK;
        _pump = new Pump(description.Pump);
        _reservoir = new Reservoir(description.Reservoir);
        _line = new Line(description.Line);
        _divider = new Divider(description, seed);
        _pressureSwitch = description.PressureSwitch is { } pressure ? new PressureSwitch(pressure) : null;
        _shaft = description.Shaft is { } shaft ? new Shaft(shaft) : null;
        _reliefPa = description.Relief.OpeningPressurePa;
        _storedAtStart = _line.StoredM3(0);
        _contentAtStart = _reservoir.ContentM3;
        Resolve();
        Schedule();
        NoteLevels();
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
    public double TemperatureK { get; private set; }

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
        TemperatureK = temperatureK;
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
        _refilled += _reservoir.Jump(contentM3);
        Settle(PlantQuantities.ReservoirContent);
    }

    private Shaft TheShaft => _shaft ?? throw new InvalidOperationException($"Plant '{Description.Name}' has no shaft: describe one.");
}
