using System;
using LubeController.Plant.Divider;
using LubeController.Plant.Inputs;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant;

/// <summary>What can be read of the system at the present time.</summary>
public sealed partial class LubricationSystem
{
    /// <summary>Gauge pressure in the line at the pump's outlet, Pa.</summary>
    public double LinePressurePa => LinePressurePaAt(NowUs);

    /// <summary>That pressure at a time up to the next event, as it will read then if nothing is changed from outside.</summary>
    /// <param name="timeUs">The time, us, from <see cref="NowUs"/> to <see cref="NextEventUs"/>.</param>
    public double LinePressurePaAt(long timeUs) => Math.Max(0, _network.PressureAt(0, PartAt(timeUs)));

    /// <summary>Gauge pressure at the end of the line: the divider's inlet, or behind the last injector, Pa.</summary>
    public double EndPressurePa => Math.Max(0, _network.PressureAt(_layout.End, Part));

    /// <summary>Gauge pressure in front of a secondary divider, Pa.</summary>
    /// <param name="secondary">Its index in the description's list.</param>
    public double SecondaryPressurePa(int secondary) => Math.Max(0, _network.PressureAt(_layout.MainNodes + secondary, Part));

    /// <summary>What the pressure transmitter reads at a time up to the next event, Pa: with its lag, offset and range.</summary>
    /// <param name="timeUs">The time, us, from <see cref="NowUs"/> to <see cref="NextEventUs"/>.</param>
    public double TransmitterPressurePaAt(long timeUs) => _transmitter.ReadingPa(PartAt(timeUs));

    /// <summary>What the pressure transmitter's current means by NAMUR NE 43 now.</summary>
    public Ne43Reading TransmitterMeaning => _transmitter.Meaning(Part);

    /// <summary>What the pressure transmitter reads now, Pa.</summary>
    public double TransmitterPressurePa => TransmitterPressurePaAt(NowUs);

    /// <summary>What a person reads from the gauge now, Pa; not a number where the plant has none.</summary>
    public double GaugePressurePa => _gauge?.ReadingPa(Part) ?? double.NaN;

    /// <summary>LubricantReservoir content, m3.</summary>
    public double ReservoirContentM3 => Math.Max(0, _reservoir.ContentM3 + (_reservoir.StepM3 * Part));

    /// <summary>Lubricant pumped into the line since the start, m3.</summary>
    public double PumpedM3 => _pumped.Value + (_pumpedStep * Part);

    /// <summary>Volume relieved since the start, m3.</summary>
    public double RelievedM3 => _relieved.Value + (_relievedStep * Part);

    /// <summary>Volume returned through vent valve and check valve since the start, m3.</summary>
    public double ReturnedM3 => _returned.Value + (_returnedStep * Part);

    /// <summary>Volume leaked from the line and from outlet lines since the start, m3.</summary>
    public double LeakedM3
    {
        get
        {
            double part = Part;
            double sum = _leaked.Value + (_leakedStep * part);
            foreach (OutletLine outlet in _outlets)
                sum += outlet.LostAfter(part);
            return sum;
        }
    }

    /// <summary>Air in the line, m3 at atmosphere.</summary>
    public double LineAirM3 => _network.AirM3At(Part);

    /// <summary>Lubricant from the pump into the line, m3/s, on average over the straight piece that now runs.</summary>
    public double PumpFlowM3PerS => _nextS > 0 && !double.IsInfinity(_nextS) ? _pumpedStep / _nextS : 0;

    /// <summary>Whether the motor turns.</summary>
    public bool MotorTurns => _pump.Turns;

    /// <summary>Level of the signalling contact of the motor's overload relay: on is tripped; false where the motor has none.</summary>
    public bool OverloadTripped => _protection is { Tripped: true };

    /// <summary>Whole revolutions of a cam pump since the start; 0 for a constant-flow pump.</summary>
    public long PumpRevolutions => _pump.Revolutions;

    /// <summary>Cam angle, fraction of a revolution from the start of delivery; 0 for a constant-flow pump.</summary>
    public double CamAngle => _pump.AngleAfter(Part * (double.IsInfinity(_nextS) ? 0 : _nextS));

    /// <summary>Viscosity of the lubricant over that at its reference temperature.</summary>
    public double ViscosityRatio => _viscosityRatio;

    /// <summary>Number of sections of all dividers, the main one's first.</summary>
    public int SectionCount
    {
        get
        {
            int sum = 0;
            foreach (ProgressiveDivider divider in _dividers)
                sum += divider.Sections;
            return sum;
        }
    }

    /// <summary>Number of outlets.</summary>
    public int OutletCount => _outlets.Length;

    /// <summary>Number of injectors.</summary>
    public int InjectorCount => _injectors.Length;

    /// <summary>How much of an injector's measure is discharged: 0 charged, 1 spent.</summary>
    public double InjectorDischarged(int injector) => _injectors[injector].DischargedAfter(Part);

    /// <summary>Complete discharges of an injector since the start.</summary>
    public long InjectorDischarges(int injector) => _injectors[injector].Discharges;

    /// <summary>Number of cycle switches.</summary>
    public int CycleSwitchCount => _switches.Length;

    /// <summary>Volume of one full cycle of the main divider: twice the sum of all its stroke volumes, m3; 0 without one.</summary>
    public double FullCycleVolumeM3 => _dividers.Length == 0 ? 0 : _dividers[0].FullCycleVolumeM3;

    /// <summary>
    /// The number of travelling waves, of several dividers the largest: pistons not where their neighbour sends them, each
    /// taken at its last end. One is normal.
    /// </summary>
    public int Waves
    {
        get
        {
            int most = 0;
            foreach (ProgressiveDivider divider in _dividers)
                most = Math.Max(most, divider.Waves());
            return most;
        }
    }

    /// <summary>What the dividers do: of several the first that is locked or blocked, if none moves.</summary>
    public PlantStatus Status
    {
        get
        {
            foreach (ProgressiveDivider divider in _dividers)
            {
                if (divider.Moves)
                    return new PlantStatus(DividerState.Moving, -1, Side.L, -1, false);
            }

            foreach (ProgressiveDivider divider in _dividers)
            {
                if (divider.HydraulicallyLocked)
                    return new PlantStatus(DividerState.HydraulicallyLocked, -1, Side.L, -1, false);
                int section = divider.BlockedPiston(out Side side);
                if (section >= 0)
                    return new PlantStatus(DividerState.Blocked, divider.FirstSection + section, side, divider.Outlet(section, side), divider.InletBlocked);
            }

            return new PlantStatus(DividerState.Idle, -1, Side.L, -1, false);
        }
    }

    /// <summary>Level of the low switch: on is closed, and wired.</summary>
    public bool LevelLow => _reservoir.Low.On;

    /// <summary>Level of the empty switch.</summary>
    public bool LevelEmpty => _reservoir.Empty.On;

    /// <summary>Level of the pressure switch; false where the plant has none.</summary>
    public bool PressureSwitchOn => _pressureSwitch is { On: true };

    /// <summary>Travel of a section's piston: 0 at L, 1 at R.</summary>
    public double PistonTravel(int section) => UnitOf(section, out int local).TravelAfter(local, Part);

    /// <summary>Volume that a section's piston displaced since the start, both ways, m3.</summary>
    public double PistonDisplacedM3(int section) => UnitOf(section, out int local).DisplacedAfter(local, Part);

    /// <summary>
    /// Strokes that a section's piston completed to a side since the start: arrivals at an end that it did not stand at last.
    /// </summary>
    public long Strokes(int section, Side side) => UnitOf(section, out int local).Strokes(local, side);

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

    /// <summary>Volume that all pistons of the main divider displaced since the start, m3.</summary>
    public double DisplacedM3
    {
        get
        {
            double sum = 0;
            for (int section = 0; section < Description.Divider.Sections.Count; section++)
                sum += PistonDisplacedM3(section);
            return sum;
        }
    }

    /// <summary>Index of the outlet that a port feeds.</summary>
    public int OutletOf(int section, Side side) => UnitOf(section, out int local).Outlet(local, side);

    /// <summary>Lubricant that the point of an outlet received since the start, m3.</summary>
    public double OutletDeliveredM3(int outlet) => _outlets[outlet].DeliveredAfter(Part);

    /// <summary>Lubricant that the point of an outlet gets, m3/s, on average over the straight piece that now runs.</summary>
    public double OutletFlowM3PerS(int outlet) => _outlets[outlet].FlowM3PerS;

    /// <summary>Level of a cycle switch at the far end of its wire: on is a closed contact on a whole wire.</summary>
    public bool CycleSwitchOn(int cycleSwitch) => _switches[cycleSwitch].On;

    /// <summary>Whether the piston actuates a cycle switch, whatever its contact and wire make of that.</summary>
    public bool CycleSwitchActuated(int cycleSwitch) => _switches[cycleSwitch].Actuated;

    /// <summary>How often a piston newly reached a cycle switch's trip point since the start.</summary>
    public long TripCrossings(int cycleSwitch) => _switches[cycleSwitch].TripCrossings;

    /// <summary>Volume of one full cycle of the divider whose piston a cycle switch senses, m3.</summary>
    public double CycleVolumeM3(int cycleSwitch) => UnitOfSwitch(cycleSwitch).FullCycleVolumeM3;

    /// <summary>
    /// How far trip-point crossings x full-cycle volume of the sensed divider lie from what its pistons displaced, m3. With one wave at most one
    /// full-cycle volume; with several nothing is promised.
    /// </summary>
    public double TripVolumeDifferenceM3(int cycleSwitch) =>
        Math.Abs((TripCrossings(cycleSwitch) * CycleVolumeM3(cycleSwitch)) - UnitOfSwitch(cycleSwitch).DisplacedM3(Part));

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
        double part = Part;
        double delivered = 0;
        foreach (OutletLine outlet in _outlets)
            delivered += outlet.DeliveredAfter(part);
        double airOut = _airOut.Value + (_airOutStep * part);
        foreach (OutletLine outlet in _outlets)
            airOut += outlet.AirOutAfter(part);
        return new VolumeBalance(
            PumpedM3,
            _ingested.Value + (_ingestedStep * part),
            delivered,
            RelievedM3,
            ReturnedM3,
            LeakedM3,
            _air.BledM3,
            airOut,
            _air.PlacedM3,
            _reservoir.RemovedM3,
            _reservoir.RefilledM3,
            _network.StoredM3(part),
            0,
            LineAirM3,
            _air.AtStartM3,
            ReservoirContentM3,
            _contentAtStart);
    }

    private ProgressiveDivider UnitOfSwitch(int cycleSwitch) => UnitOf(FindSection(Description.CycleSwitches[cycleSwitch].Section), out _);

    private ProgressiveDivider UnitOf(int section, out int local)
    {
        int unit = 0;
        while (section - _dividers[unit].FirstSection >= _dividers[unit].Sections)
            unit++;
        local = section - _dividers[unit].FirstSection;
        return _dividers[unit];
    }

    private long NotPast(long timeUs) => timeUs >= NowUs
        ? timeUs
        : throw new ArgumentOutOfRangeException(nameof(timeUs), timeUs, $"Accepted is {NowUs} us, the present, and later.");
}
