using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The volumes of a network. Each holds, beyond what it holds at atmosphere, C p + A u(p): lubricant and wall by compliance
/// C, and what its air A gave up. State is that stored volume; the pressure follows from it. What the planned step changes
/// is kept beside the state.
/// </summary>
internal sealed class NodeVolumes
{
    private readonly double[] _compliance;
    private readonly double[] _stored;
    private readonly Gas _gas;

    internal NodeVolumes(double[] volumeM3, double[] complianceM3PerPa, double[] airM3, double gasExponent)
    {
        Count = volumeM3.Length;
        VolumeM3 = volumeM3;
        _compliance = complianceM3PerPa;
        AirM3 = airM3;
        _gas = new Gas(gasExponent);
        _stored = new double[Count];
        PressurePa = new double[Count];
        EndPressurePa = new double[Count];
        StoredChangeM3 = new double[Count];
        AirChangeM3 = new double[Count];
        SlopePaPerM3 = new double[Count];
        GivenUp = new double[Count];
    }

    internal int Count { get; }

    internal double[] VolumeM3 { get; }

    /// <summary>Air in each, m3 at atmosphere.</summary>
    internal double[] AirM3 { get; }

    internal double[] PressurePa { get; }

    /// <summary>The pressures at the planned step's end.</summary>
    internal double[] EndPressurePa { get; }

    /// <summary>What the planned step adds to each stored volume.</summary>
    internal double[] StoredChangeM3 { get; }

    /// <summary>What the planned step adds to the air of each.</summary>
    internal double[] AirChangeM3 { get; }

    /// <summary>Rise of each pressure with its stored volume, at the step's start.</summary>
    internal double[] SlopePaPerM3 { get; }

    /// <summary>The fraction that air has given up of its volume at atmosphere, at the step's start.</summary>
    internal double[] GivenUp { get; }

    /// <summary>
    /// How far the straight line between the planned step's pressures lies from the curve, Pa, at most; 0 without air, which
    /// alone bends it while volumes move in straight lines.
    /// </summary>
    internal double BendPa { get; private set; }

    /// <summary>Whether the tried step would carry more air out of a node than is in it.</summary>
    internal bool WouldLackAir
    {
        get
        {
            for (int i = 0; i < Count; i++)
            {
                if (AirM3[i] + AirChangeM3[i] < 0)
                    return true;
            }

            return false;
        }
    }

    /// <summary>The fraction that air has given up at the middle of the planned step.</summary>
    internal double GivenUpAtMiddle(int node) => _gas.GivenUp(0.5 * (PressurePa[node] + EndPressurePa[node]), out _);

    /// <summary>What all hold beyond atmosphere, from their pressures, a part of the planned step on, m3.</summary>
    internal double SumStoredM3(double part)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
        {
            double air = AirM3[i] + (part * AirChangeM3[i]);
            sum += Holds(i, PressureOf(i, _stored[i] + (part * StoredChangeM3[i]), air), air);
        }

        return sum;
    }

    /// <summary>Air in all, m3 at atmosphere, a part of the planned step on.</summary>
    internal double SumAirM3(double part)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
            sum += AirM3[i] + (part * AirChangeM3[i]);
        return sum;
    }

    /// <summary>Notes slopes and air given up as of now.</summary>
    internal void Begin()
    {
        for (int i = 0; i < Count; i++)
        {
            GivenUp[i] = _gas.GivenUp(PressurePa[i], out double slope);
            SlopePaPerM3[i] = 1 / (_compliance[i] + (AirM3[i] * slope));
        }
    }

    /// <summary>The pressure of a node with so much more stored, Pa.</summary>
    internal double PressureWith(int node, double addedM3) => PressureOf(node, _stored[node] + addedM3, AirM3[node]);

    /// <summary>Plans that nothing changes.</summary>
    internal void PlanStandstill()
    {
        Array.Clear(StoredChangeM3);
        Array.Clear(AirChangeM3);
        Array.Copy(PressurePa, EndPressurePa, Count);
    }

    /// <summary>Finds the pressures at the end of the planned step, and how far they bend on the way.</summary>
    internal void FindEndPressures()
    {
        BendPa = 0;
        for (int i = 0; i < Count; i++)
        {
            double air = AirM3[i] + AirChangeM3[i];
            EndPressurePa[i] = PressureOf(i, _stored[i] + StoredChangeM3[i], air);
            if (air <= 0)
                continue;
            double middle = PressureOf(i, _stored[i] + (StoredChangeM3[i] / 2), AirM3[i] + (AirChangeM3[i] / 2));
            BendPa = Math.Max(BendPa, Math.Abs(middle - ((PressurePa[i] + EndPressurePa[i]) / 2)));
        }
    }

    /// <summary>Makes a part of the planned step the present.</summary>
    internal void Commit(double part)
    {
        for (int i = 0; i < Count; i++)
        {
            _stored[i] += part * StoredChangeM3[i];
            AirM3[i] = Math.Max(0, AirM3[i] + (part * AirChangeM3[i]));
            PressurePa[i] = part == 1 ? EndPressurePa[i] : PressureOf(i, _stored[i], AirM3[i]);
        }
    }

    /// <summary>Sets the air in all: more is spread by volume, displaces lubricant and lets the pressure fall; less is bled at standing pressure.</summary>
    /// <returns>Stored volume lost by bleeding, m3.</returns>
    internal double SetAir(double airM3)
    {
        double whole = 0;
        double now = 0;
        for (int i = 0; i < Count; i++)
        {
            whole += VolumeM3[i];
            now += AirM3[i];
        }

        double lost = 0;
        for (int i = 0; i < Count; i++)
        {
            if (airM3 < now)
            {
                double before = _stored[i];
                AirM3[i] *= airM3 / now;
                _stored[i] = Holds(i, PressurePa[i], AirM3[i]);
                lost += before - _stored[i];
            }
            else
            {
                AirM3[i] += (airM3 - now) * (VolumeM3[i] / whole);
                PressurePa[i] = PressureOf(i, _stored[i], AirM3[i]);
            }
        }

        return lost;
    }

    private double Holds(int node, double pressurePa, double airM3) =>
        (_compliance[node] * pressurePa) + (airM3 == 0 ? 0 : airM3 * _gas.GivenUp(pressurePa, out _));

    private double PressureOf(int node, double storedM3, double airM3) => _gas.PressurePa(storedM3, airM3, _compliance[node], PressurePa[node]);
}
