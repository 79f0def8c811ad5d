using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// Volumes that store (nodes) and ways between and out of them (branches). A node holds, beyond what it holds at atmosphere,
/// C p + A u(p): lubricant and wall by compliance C, and what its air A gave up. State is that stored volume; pressure
/// follows from it.
/// </summary>
/// <remarks>
/// One step is a Rosenbrock step of order two with a factor of 1 - 1/sqrt(2), L-stable (Verwer, Spee, Blom and Hundsdorfer
/// 1999, from memory): one matrix, two solutions, no iteration. Every branch's volume is a linear combination of the same
/// stages as the nodes' change, so what leaves one place arrives at another to rounding. Air is carried with the flow, its
/// share in each node taken as of the step's start; in the stages it counts with the room that it takes at the pressure where
/// it arrives.
/// </remarks>
internal sealed class Network
{
    private const double Gamma = 0.29289321881345254;

    private readonly int _n;
    private readonly double[] _compliance;
    private readonly double[] _volume;
    private readonly Gas _gas;
    private readonly double[] _stored;
    private readonly double[] _air;
    private readonly double[] _pressure;

    private readonly double[] _slope;
    private readonly double[] _airShare;
    private readonly double[] _liquidShare;
    private readonly double[] _reference;
    private readonly double[] _givenUp;
    private double _pumpRoom;
    private readonly double[] _stagePressure;
    private readonly double[] _k1;
    private readonly double[] _k2;
    private readonly double[] _matrix;
    private readonly double[] _storedChange;
    private readonly double[] _airChange;
    private readonly double[] _endPressure;

    private Branch[] _branches = new Branch[16];
    private double[] _flow = new double[16];
    private double[] _flowSlope = new double[16];
    private double[] _stageFlow = new double[16];
    private double[] _branchVolume = new double[16];
    private bool _anyAir;

    internal Network(double[] volumeM3, double[] complianceM3PerPa, double[] airM3, double gasExponent)
    {
        _n = volumeM3.Length;
        _volume = volumeM3;
        _compliance = complianceM3PerPa;
        _gas = new Gas(gasExponent);
        _air = airM3;
        _stored = new double[_n];
        _pressure = new double[_n];
        _slope = new double[_n];
        _airShare = new double[_n];
        _liquidShare = new double[_n];
        _reference = new double[_n];
        _givenUp = new double[_n];
        _stagePressure = new double[_n];
        _k1 = new double[_n];
        _k2 = new double[_n];
        _matrix = new double[_n * _n];
        _storedChange = new double[_n];
        _airChange = new double[_n];
        _endPressure = new double[_n];
    }

    internal int Nodes => _n;

    internal int Branches { get; private set; }

    /// <summary>What the pump brings into node 0; set before each step.</summary>
    internal Inflow Pump { get; set; }

    /// <summary>Volume that the pump brings in the planned step, lubricant and air at atmosphere, m3.</summary>
    internal double PumpVolumeM3 { get; private set; }

    /// <summary>The error that the planned step is estimated to make in a node's stored volume, m3: the largest.</summary>
    internal double ErrorM3 { get; private set; }

    /// <summary>
    /// How far the straight line between the planned step's pressures lies from the curve, Pa, at most; 0 without air, which
    /// alone bends it while volumes move in straight lines.
    /// </summary>
    internal double BendPa { get; private set; }

    internal double PressurePa(int node) => _pressure[node];

    internal double EndPressurePa(int node) => _endPressure[node];

    internal double VolumeM3(int node) => _volume[node];

    internal double AirM3(int node) => _air[node];

    internal ref readonly Branch Branch(int index) => ref _branches[index];

    /// <summary>Flow of a branch at the step's start, m3/s.</summary>
    internal double FlowM3PerS(int branch) => _flow[branch];

    /// <summary>Volume through a branch in the planned step, m3 at the pressure where it flows.</summary>
    internal double BranchVolumeM3(int branch) => _branchVolume[branch];

    /// <summary>The lubricant in each volume that leaves a node.</summary>
    internal double LiquidShare(int node) => _liquidShare[node];

    /// <summary>The air at atmosphere with each volume that leaves a node.</summary>
    internal double AirShare(int node) => _airShare[node];

    /// <summary>What all nodes hold beyond atmosphere, from their pressures, m3.</summary>
    internal double StoredM3(double part)
    {
        double sum = 0;
        for (int i = 0; i < _n; i++)
        {
            double air = _air[i] + (part * _airChange[i]);
            double pressure = PressureOf(_stored[i] + (part * _storedChange[i]), air, _compliance[i], _pressure[i]);
            sum += Holds(i, pressure, air);
        }

        return sum;
    }

    /// <summary>Air in all nodes, m3 at atmosphere, a part of the planned step on.</summary>
    internal double AirM3At(double part)
    {
        double sum = 0;
        for (int i = 0; i < _n; i++)
            sum += _air[i] + (part * _airChange[i]);
        return sum;
    }

    /// <summary>Pressure on the straight line to the planned step's end, Pa.</summary>
    internal double PressureAt(int node, double part) => _pressure[node] + (part * (_endPressure[node] - _pressure[node]));

    internal void ClearBranches() => Branches = 0;

    internal void Add(in Branch branch)
    {
        if (Branches == _branches.Length)
            Grow();
        _branches[Branches++] = branch;
    }

    internal void SetBranchVolume(int branch, double volumeM3)
    {
        double change = volumeM3 - _branchVolume[branch];
        _branchVolume[branch] = volumeM3;
        ref readonly Branch b = ref _branches[branch];
        Move(_storedChange, b.From, b.To, change * _reference[b.From]);
        Move(_airChange, b.From, b.To, change * _airShare[b.From]);
    }

    /// <summary>Notes shares and flows as of now; called once before steps are tried from here.</summary>
    internal void Begin()
    {
        _anyAir = Pump.AirShare > 0;
        for (int i = 0; i < _n; i++)
        {
            double givenUp = _gas.GivenUp(_pressure[i], out double givenUpSlope);
            _givenUp[i] = givenUp;
            _slope[i] = 1 / (_compliance[i] + (_air[i] * givenUpSlope));
            double concentration = Math.Min(_air[i] / _volume[i], 1);
            _anyAir |= _air[i] > 0;
            _airShare[i] = concentration;
            _liquidShare[i] = 1 - (concentration * (1 - givenUp));
            _reference[i] = _liquidShare[i] + concentration;
        }

        _pumpRoom = 1 - (Pump.AirShare * _givenUp[0]);
        for (int b = 0; b < Branches; b++)
        {
            _flow[b] = Evaluate(b, _pressure, out double drop, out _flowSlope[b]);
            if (drop <= 0 && _branches[b].OneWay && drop > -2 * Crossing.NearPa(_branches[b].OffsetPa))
                _flowSlope[b] = SlopeAtOnset(_branches[b]);
        }
    }

    /// <summary>Whether nothing flows now, to the given bound, m3/s.</summary>
    internal bool Still(double boundM3PerS)
    {
        if (Pump.At(_pressure[0], out _) > 0)
            return false;
        for (int b = 0; b < Branches; b++)
        {
            if (Math.Abs(_flow[b]) > boundM3PerS)
                return false;
        }

        return true;
    }

    /// <summary>Plans that nothing changes.</summary>
    internal void Stand()
    {
        Array.Clear(_storedChange);
        Array.Clear(_airChange);
        Array.Clear(_branchVolume);
        Array.Copy(_pressure, _endPressure, _n);
        PumpVolumeM3 = 0;
        ErrorM3 = 0;
    }

    /// <summary>Whether the tried step would carry more air out of a node than is in it.</summary>
    internal bool WouldTakeMissingAir
    {
        get
        {
            for (int i = 0; i < _n; i++)
            {
                if (_air[i] + _airChange[i] < 0)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Tries a step; what it would change is kept beside the state.</summary>
    internal void Try(double seconds)
    {
        double gammaH = Gamma * seconds;
        FillMatrix(gammaH);
        double pump0 = Pump.At(_pressure[0], out double pumpSlope);
        Assemble(_flow, pump0, _k1);
        Solve(_k1);
        for (int i = 0; i < _n; i++)
            _stagePressure[i] = PressureOf(_stored[i] + (seconds * _k1[i]), _air[i], _compliance[i], _pressure[i]);
        for (int b = 0; b < Branches; b++)
            _stageFlow[b] = Evaluate(b, _stagePressure, out _, out _);
        double pump1 = Pump.At(_stagePressure[0], out _);
        Assemble(_stageFlow, pump1, _k2);
        for (int i = 0; i < _n; i++)
            _k2[i] -= 2 * _k1[i];
        Solve(_k2);
        Combine(seconds, gammaH, pump0, pump1, pumpSlope);
    }

    /// <summary>
    /// Looks for one-way flows that begin or cease within the tried step: there they have a corner, which the stages do not
    /// see. Corners that cost less than a volume, which is at most what the node stores meanwhile, are left alone.
    /// </summary>
    internal void LookForCorners(double seconds, double leastM3, ref Crossing crossing)
    {
        for (int b = 0; b < Branches; b++)
        {
            ref readonly Branch branch = ref _branches[b];
            if (!branch.OneWay)
                continue;
            double start = _pressure[branch.From] - branch.OffsetPa;
            double end = _endPressure[branch.From] - branch.OffsetPa;
            if (branch.To >= 0)
            {
                start -= _pressure[branch.To];
                end -= _endPressure[branch.To];
            }

            if (start > 0 == end > 0)
                continue;
            double closed = start > 0 ? -end : -start;
            double slope = Math.Max(_flowSlope[b], SlopeAtOnset(branch));
            double amiss = 0.5 * seconds * slope * closed * closed / Math.Abs(end - start);
            if (Math.Min(amiss, closed / _slope[branch.From]) <= leastM3)
                continue;
            double near = Crossing.NearPa(branch.OffsetPa);
            crossing.Rising(start, end, 0, near);
            crossing.Falling(start, end, 0, near);
        }
    }

    /// <summary>Finds the pressures at the end of the planned step, after any change of branch volumes.</summary>
    internal void Close()
    {
        BendPa = 0;
        for (int i = 0; i < _n; i++)
        {
            double air = _air[i] + _airChange[i];
            _endPressure[i] = PressureOf(_stored[i] + _storedChange[i], air, _compliance[i], _pressure[i]);
            if (air <= 0)
                continue;
            double middle = PressureOf(_stored[i] + (_storedChange[i] / 2), _air[i] + (_airChange[i] / 2), _compliance[i], _pressure[i]);
            BendPa = Math.Max(BendPa, Math.Abs(middle - ((_pressure[i] + _endPressure[i]) / 2)));
        }
    }

    /// <summary>
    /// Takes the shares in what leaves each node at the middle of the tried step instead of at its start, which leaves them
    /// an error of second order; to be followed by another <see cref="Close"/>.
    /// </summary>
    internal void TakeMiddleShares()
    {
        if (!_anyAir)
            return;
        for (int i = 0; i < _n; i++)
        {
            double givenUp = _gas.GivenUp(0.5 * (_pressure[i] + _endPressure[i]), out _);
            _liquidShare[i] = 1 - (_airShare[i] * (1 - givenUp));
            _reference[i] = _liquidShare[i] + _airShare[i];
        }

        Share();
    }

    /// <summary>Makes a part of the planned step the present.</summary>
    internal void Commit(double part)
    {
        for (int i = 0; i < _n; i++)
        {
            _stored[i] += part * _storedChange[i];
            _air[i] = Math.Max(0, _air[i] + (part * _airChange[i]));
            _pressure[i] = part == 1 ? _endPressure[i] : PressureOf(_stored[i], _air[i], _compliance[i], _pressure[i]);
        }
    }

    /// <summary>Sets the air in all: more is spread by volume, displaces lubricant and lets the pressure fall; less is bled at standing pressure.</summary>
    /// <returns>Stored volume lost by bleeding, m3.</returns>
    internal double SetAir(double airM3)
    {
        double whole = 0;
        double now = 0;
        for (int i = 0; i < _n; i++)
        {
            whole += _volume[i];
            now += _air[i];
        }

        double lost = 0;
        for (int i = 0; i < _n; i++)
        {
            if (airM3 < now)
            {
                double before = _stored[i];
                _air[i] *= airM3 / now;
                _stored[i] = Holds(i, _pressure[i], _air[i]);
                lost += before - _stored[i];
            }
            else
            {
                _air[i] += (airM3 - now) * (_volume[i] / whole);
                _pressure[i] = PressureOf(_stored[i], _air[i], _compliance[i], _pressure[i]);
            }
        }

        return lost;
    }

    internal void AddTo(ref Fingerprint print)
    {
        for (int i = 0; i < _n; i++)
        {
            print.Add(_stored[i]);
            print.Add(_air[i]);
            print.Add(_pressure[i]);
            print.Add(_storedChange[i]);
        }
    }

    private static void Move(double[] changes, int from, int to, double amount)
    {
        changes[from] -= amount;
        if (to >= 0)
            changes[to] += amount;
    }

    /// <summary>Makes room for so many branches, so that none is made later.</summary>
    internal void Reserve(int branches)
    {
        if (branches > _branches.Length)
            Resize(branches);
    }

    private void Grow() => Resize(2 * _branches.Length);

    private void Resize(int length)
    {
        Array.Resize(ref _branches, length);
        Array.Resize(ref _flow, length);
        Array.Resize(ref _flowSlope, length);
        Array.Resize(ref _stageFlow, length);
        Array.Resize(ref _branchVolume, length);
    }

    private double Holds(int node, double pressurePa, double airM3) =>
        (_compliance[node] * pressurePa) + (airM3 == 0 ? 0 : airM3 * _gas.GivenUp(pressurePa, out _));

    // C p + A u(p) = stored. Isothermal: the positive root of a quadratic, in the form that does not cancel.
    private double PressureOf(double stored, double air, double compliance, double guess)
    {
        if (air <= 0)
            return stored / compliance;
        if (_gas.IsIsothermal)
        {
            double b = (compliance * Gas.AtmospherePa) + air - stored;
            double root = Math.Sqrt((b * b) + (4 * compliance * stored * Gas.AtmospherePa));
            return b >= 0 ? 2 * stored * Gas.AtmospherePa / (b + root) : (root - b) / (2 * compliance);
        }

        if (stored <= 0)
            return stored / (compliance + (air * _gas.SlopeAtAtmosphere));

        // What is held rises ever slower: from above Newton's step may pass the root, and even 0, but from below it never does.
        double pressure = Math.Max(0, guess);
        for (int i = 0; i < 60; i++)
        {
            double off = (compliance * pressure) + (air * _gas.GivenUp(pressure, out double slope)) - stored;
            double next = Math.Max(0, pressure - (off / (compliance + (air * slope))));
            double step = next - pressure;
            pressure = next;
            if (Math.Abs(step) <= 1e-13 * pressure)
                break;
        }

        return pressure;
    }

    // A way that stands right at its onset is about to open: the matrix must know how steeply.
    private static double SlopeAtOnset(in Branch b) => b.Weight * (b.Table?.SlopeAtOnset ?? b.Conductance);

    private double Evaluate(int index, double[] pressure, out double drop, out double slope)
    {
        ref readonly Branch b = ref _branches[index];
        drop = pressure[b.From] - b.OffsetPa;
        if (b.To >= 0)
            drop -= pressure[b.To];
        if (b.OneWay && drop <= 0)
        {
            slope = 0;
            return 0;
        }

        if (b.Table is null)
        {
            slope = b.Weight * b.Conductance;
            return slope * drop;
        }

        double flow = b.Table.Flow(drop, out slope);
        slope *= b.Weight;
        return b.Weight * flow;
    }

    private int Upstream(int branch, double flow) => flow >= 0 || _branches[branch].To < 0 ? _branches[branch].From : _branches[branch].To;

    private void Assemble(double[] flow, double pump, double[] into)
    {
        Array.Clear(into);
        into[0] = pump * _pumpRoom;
        for (int index = 0; index < Branches; index++)
        {
            ref readonly Branch b = ref _branches[index];
            if (b.To < 0)
            {
                into[b.From] -= flow[index];
                continue;
            }

            into[b.From] -= flow[index] * RoomAt(b.From, index);
            into[b.To] += flow[index] * RoomAt(b.To, index);
        }
    }

    // A volume that leaves takes its own room; one that arrives takes more or less by what its air gave up on the way.
    private double RoomAt(int node, int branch)
    {
        int upstream = Upstream(branch, _flow[branch]);
        return node == upstream ? 1 : 1 + (_airShare[upstream] * (_givenUp[upstream] - _givenUp[node]));
    }

    // I - gamma h J, J taken over stored volume.
    private void FillMatrix(double gammaH)
    {
        Array.Clear(_matrix);
        for (int i = 0; i < _n; i++)
            _matrix[(i * _n) + i] = 1;
        Pump.At(_pressure[0], out double pumpSlope);
        _matrix[0] -= gammaH * pumpSlope * _pumpRoom * _slope[0];
        for (int index = 0; index < Branches; index++)
        {
            double by = gammaH * _flowSlope[index];
            if (by == 0)
                continue;
            ref readonly Branch b = ref _branches[index];
            if (b.To < 0)
            {
                _matrix[(b.From * _n) + b.From] += by * _slope[b.From];
                continue;
            }

            double from = by * RoomAt(b.From, index);
            double to = by * RoomAt(b.To, index);
            _matrix[(b.From * _n) + b.From] += from * _slope[b.From];
            _matrix[(b.From * _n) + b.To] -= from * _slope[b.To];
            _matrix[(b.To * _n) + b.From] -= to * _slope[b.From];
            _matrix[(b.To * _n) + b.To] += to * _slope[b.To];
        }

        Factor();
    }

    // Every column's diagonal outweighs the rest of it, so no pivot is needed.
    private void Factor()
    {
        for (int k = 0; k < _n; k++)
        {
            double inverse = 1 / _matrix[(k * _n) + k];
            for (int i = k + 1; i < _n; i++)
            {
                double factor = _matrix[(i * _n) + k] * inverse;
                if (factor == 0)
                    continue;
                _matrix[(i * _n) + k] = factor;
                for (int j = k + 1; j < _n; j++)
                    _matrix[(i * _n) + j] -= factor * _matrix[(k * _n) + j];
            }
        }
    }

    private void Solve(double[] x)
    {
        for (int i = 1; i < _n; i++)
        {
            for (int j = 0; j < i; j++)
                x[i] -= _matrix[(i * _n) + j] * x[j];
        }

        for (int i = _n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < _n; j++)
                x[i] -= _matrix[(i * _n) + j] * x[j];
            x[i] /= _matrix[(i * _n) + i];
        }
    }

    private void Combine(double seconds, double gammaH, double pump0, double pump1, double pumpSlope)
    {
        double first = pump0 + (gammaH * pumpSlope * _slope[0] * _k1[0]);
        double second = pump1 - (2 * first) + (gammaH * pumpSlope * _slope[0] * _k2[0]);
        PumpVolumeM3 = seconds * ((1.5 * first) + (0.5 * second));
        double shut = 0;
        for (int index = 0; index < Branches; index++)
        {
            ref readonly Branch b = ref _branches[index];
            double volume = seconds * StageSum(b, index, gammaH);
            if (b.OneWay && volume < 0)
            {
                // The stages took a way that has closed for one that flows back: what they did not see is their error.
                shut = Math.Max(shut, -volume);
                volume = 0;
            }

            _branchVolume[index] = volume;
        }

        Share();
        double worst = 0;
        for (int i = 0; i < _n; i++)
            worst = Math.Max(worst, Math.Abs(_k1[i] + _k2[i]));
        ErrorM3 = Math.Max(0.5 * seconds * worst, shut);
    }

    // What the branches' volumes hold and where it goes.
    private void Share()
    {
        Array.Clear(_storedChange);
        Array.Clear(_airChange);
        _storedChange[0] = PumpVolumeM3;
        _airChange[0] = PumpVolumeM3 * Pump.AirShare;
        for (int index = 0; index < Branches; index++)
        {
            ref readonly Branch b = ref _branches[index];
            int upstream = Upstream(index, _flow[index]);
            Move(_storedChange, b.From, b.To, _branchVolume[index] * _reference[upstream]);
            if (_anyAir)
                Move(_airChange, b.From, b.To, _branchVolume[index] * _airShare[upstream]);
        }
    }

    private double StageSum(in Branch b, int index, double gammaH)
    {
        double by = gammaH * _flowSlope[index];
        double lift1 = _slope[b.From] * _k1[b.From];
        double lift2 = _slope[b.From] * _k2[b.From];
        if (b.To >= 0)
        {
            lift1 -= _slope[b.To] * _k1[b.To];
            lift2 -= _slope[b.To] * _k2[b.To];
        }

        double first = _flow[index] + (by * lift1);
        double second = _stageFlow[index] - (2 * first) + (by * lift2);
        return (1.5 * first) + (0.5 * second);
    }
}
