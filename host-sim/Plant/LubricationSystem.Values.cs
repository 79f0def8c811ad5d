using System;
using LubeController.Plant.Description;

namespace LubeController.Plant;

/// <summary>What can be read of the system at the present time.</summary>
public sealed partial class LubricationSystem
{
    /// <summary>Gauge pressure in the line, Pa.</summary>
    public double LinePressurePa => LinePressurePaAt(NowUs);

    /// <summary>Line pressure at a time up to the next event, as it will read then if nothing is changed from outside.</summary>
    /// <param name="timeUs">The time, us, from <see cref="NowUs"/> to <see cref="NextEventUs"/>.</param>
    public double LinePressurePaAt(long timeUs) => Math.Max(0, _line.PressurePa + (_line.RatePaPerS * SinceAnchorAtS(timeUs)));

    /// <summary>Reservoir content, m3.</summary>
    public double ReservoirContentM3 => Math.Max(0, _reservoir.ContentM3 + (_reservoir.RateM3PerS * SinceAnchorS));

    /// <summary>Volume pumped into the line since the start, m3.</summary>
    public double PumpedM3 => _pumped.Value + (_pumpM3PerS * SinceAnchorS);

    /// <summary>Volume relieved since the start, m3.</summary>
    public double RelievedM3 => _relieved.Value + (_reliefM3PerS * SinceAnchorS);

    /// <summary>Volume leaked since the start, m3.</summary>
    public double LeakedM3 => _leaked.Value + (_leakingM3PerS * SinceAnchorS);

    /// <summary>Flow out of the pump now, m3/s.</summary>
    public double PumpFlowM3PerS => _pumpM3PerS;

    /// <summary>Whether the motor turns.</summary>
    public bool MotorTurns => _pump.Turns;

    /// <summary>Whole revolutions of a cam pump since the start; 0 for a constant-flow pump.</summary>
    public long PumpRevolutions => _pump.Revolutions;

    /// <summary>Cam angle, fraction of a revolution from the start of delivery; 0 for a constant-flow pump.</summary>
    public double CamAngle => _pump.AngleAfter(SinceAnchorS);

    /// <summary>Number of sections, N.</summary>
    public int SectionCount => _divider.Sections;

    /// <summary>Number of outlets.</summary>
    public int OutletCount => Description.Outlets.Count;

    /// <summary>Number of cycle switches.</summary>
    public int CycleSwitchCount => _divider.Switches.Length;

    /// <summary>Volume of one full cycle: twice the sum of all stroke volumes, m3.</summary>
    public double FullCycleVolumeM3 => _divider.FullCycleVolumeM3;

    /// <summary>The number of travelling waves: pistons not where their neighbour sends them, each taken at its last end. One is normal.</summary>
    public int Waves => _divider.Waves();

    /// <summary>What the divider does.</summary>
    public PlantStatus Status
    {
        get
        {
            if (_divider.Moves)
                return new PlantStatus(DividerState.Moving, -1, Side.L, -1, false);
            if (_divider.HydraulicallyLocked())
                return new PlantStatus(DividerState.HydraulicallyLocked, -1, Side.L, -1, false);
            int section = _divider.BlockedPiston(out Side side);
            return section < 0
                ? new PlantStatus(DividerState.Idle, -1, Side.L, -1, false)
                : new PlantStatus(DividerState.Blocked, section, side, _divider.Outlet(section, side), _divider.InletBlocked);
        }
    }

    /// <summary>Level of the low switch: on is closed, and wired.</summary>
    public bool LevelLow => _reservoir.Low.On;

    /// <summary>Level of the empty switch.</summary>
    public bool LevelEmpty => _reservoir.Empty.On;

    /// <summary>Level of the pressure switch; false where the plant has none.</summary>
    public bool PressureSwitchOn => _pressureSwitch is { On: true };

    /// <summary>Travel of a section's piston: 0 at L, 1 at R.</summary>
    public double PistonTravel(int section) => _divider.TravelAfter(section, SinceAnchorS);

    /// <summary>Volume that a section's piston displaced since the start, both ways, m3.</summary>
    public double PistonDisplacedM3(int section) => _divider.DisplacedAfter(section, SinceAnchorS);

    /// <summary>
    /// Strokes that a section's piston completed to a side since the start: arrivals at an end that it did not stand at last.
    /// </summary>
    public long Strokes(int section, Side side) => _divider.Strokes(section, side);

    /// <summary>Strokes completed by all pistons since the start.</summary>
    public long TotalStrokes
    {
        get
        {
            long sum = 0;
            for (int section = 0; section < SectionCount; section++)
                sum += Strokes(section, Side.L) + Strokes(section, Side.R);
            return sum;
        }
    }

    /// <summary>Volume that all pistons displaced since the start, m3.</summary>
    public double DisplacedM3
    {
        get
        {
            double sum = 0;
            for (int section = 0; section < SectionCount; section++)
                sum += PistonDisplacedM3(section);
            return sum;
        }
    }

    /// <summary>Index of the outlet that a port feeds.</summary>
    public int OutletOf(int section, Side side) => _divider.Outlet(section, side);

    /// <summary>Volume that an outlet received since the start, m3.</summary>
    public double OutletDeliveredM3(int outlet) => _divider.DeliveredAfter(outlet, SinceAnchorS);

    /// <summary>Flow out of an outlet now, m3/s.</summary>
    public double OutletFlowM3PerS(int outlet) => _divider.OutletFlow(outlet);

    /// <summary>Level of a cycle switch at the far end of its wire: on is a closed contact on a whole wire.</summary>
    public bool CycleSwitchOn(int cycleSwitch) => _divider.Switches[cycleSwitch].On;

    /// <summary>Whether the piston actuates a cycle switch, whatever its contact and wire make of that.</summary>
    public bool CycleSwitchActuated(int cycleSwitch) => _divider.Switches[cycleSwitch].Actuated;

    /// <summary>How often a piston newly reached a cycle switch's trip point since the start.</summary>
    public long TripCrossings(int cycleSwitch) => _divider.Switches[cycleSwitch].TripCrossings;

    /// <summary>
    /// How far trip-point crossings x full-cycle volume lie from what the pistons displaced, m3. With one wave at most one
    /// full-cycle volume; with several nothing is promised.
    /// </summary>
    public double TripVolumeDifferenceM3(int cycleSwitch) =>
        Math.Abs((TripCrossings(cycleSwitch) * FullCycleVolumeM3) - DisplacedM3);

    /// <summary>Index of a cycle switch by name, or -1.</summary>
    public int FindCycleSwitch(string name)
    {
        for (int i = 0; i < Description.CycleSwitches.Count; i++)
        {
            if (string.Equals(Description.CycleSwitches[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }

    /// <summary>Index of an outlet by name, or -1.</summary>
    public int FindOutlet(string name)
    {
        for (int i = 0; i < Description.Outlets.Count; i++)
        {
            if (string.Equals(Description.Outlets[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }

    /// <summary>Whether the plant has a shaft.</summary>
    public bool HasShaft => _shaft is not null;

    /// <summary>Shaft speed now, revolutions per second; 0 where the plant has no shaft.</summary>
    public double ShaftSpeedRevPerS => _shaft?.SpeedAt(NowUs) ?? 0;

    /// <summary>Revolutions of the shaft since the start; 0 where the plant has no shaft.</summary>
    public double ShaftRevolutions => _shaft?.RevolutionsAt(NowUs) ?? 0;

    /// <summary>Pulses that the shaft switch gives from the start up to and including a time, at the present profile.</summary>
    /// <param name="timeUs">The time, us; not before <see cref="NowUs"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time lies in the past.</exception>
    /// <exception cref="InvalidOperationException">The plant has no shaft.</exception>
    public long ShaftPulsesAt(long timeUs) => TheShaft.PulsesAt(NotPast(timeUs));

    /// <summary>
    /// The first whole us at which the pulse count is at least n, at the present profile; <see cref="long.MaxValue"/> if
    /// never. If it was so before the profile last changed, the time of that change.
    /// </summary>
    /// <exception cref="InvalidOperationException">The plant has no shaft.</exception>
    public long TimeOfShaftPulseUs(long n) => TheShaft.TimeOfUs(n);

    /// <summary>When the last pulse up to and including a time came, us, rounded up; -1 if there was none.</summary>
    /// <param name="timeUs">The time, us; not before <see cref="NowUs"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time lies in the past.</exception>
    /// <exception cref="InvalidOperationException">The plant has no shaft.</exception>
    public long LastShaftPulseUs(long timeUs) => TheShaft.LastPulseUs(NotPast(timeUs));

    /// <summary>The volume balance now.</summary>
    public VolumeBalance Balance()
    {
        double delivered = 0;
        for (int outlet = 0; outlet < OutletCount; outlet++)
            delivered += OutletDeliveredM3(outlet);
        return new VolumeBalance(
            PumpedM3,
            delivered,
            RelievedM3,
            LeakedM3,
            _bled,
            _removed,
            _refilled,
            _line.StoredM3(LinePressurePa),
            _storedAtStart,
            ReservoirContentM3,
            _contentAtStart);
    }

    /// <summary>
    /// A hash over every bit of the state. Two systems with the same description, seed and history of commands have the same
    /// one, however their time was cut into steps.
    /// </summary>
    public ulong StateFingerprint()
    {
        Fingerprint print = default;
        print.Add(NowUs);
        print.Add(_anchorUs);
        print.Add(_anchorPartUs);
        print.Add(_nextFlowUs);
        print.Add(_nextToggleUs);
        print.Add(_nextS);
        print.Add(_leakM3PerS);
        print.Add(_reliefPa);
        _pumped.AddTo(ref print);
        _relieved.AddTo(ref print);
        _leaked.AddTo(ref print);
        print.Add(_bled);
        print.Add(_removed);
        print.Add(_refilled);
        print.Add(TemperatureK);
        print.Add(EventCount);
        _pump.AddTo(ref print);
        _reservoir.AddTo(ref print);
        _line.AddTo(ref print);
        _divider.AddTo(ref print);
        _pressureSwitch?.AddTo(ref print);
        _shaft?.AddTo(ref print);
        return print.Value;
    }

    private long NotPast(long timeUs) => timeUs >= NowUs
        ? timeUs
        : throw new ArgumentOutOfRangeException(nameof(timeUs), timeUs, $"Accepted is {NowUs} us, the present, and later.");
}
