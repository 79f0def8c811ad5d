using LubeController.Plant.Circuits;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Sensors;

/// <summary>The circuit of one sensor loop. Its cores can fail one by one; answers for an open and a closed output are kept.</summary>
internal sealed class LoopCircuit
{
    private const double ShortOhms = 0.1;
    private const double OutputOhms = 1;

    // A NAMUR amplifier's other terminal: all but ground.
    private const double ReturnOhms = 0.01;

    private readonly SensorLoopDescription _description;
    private readonly Circuit _circuit = new();
    private readonly int[] _near = new int[3];
    private readonly int[] _far = new int[3];
    private readonly Wire[] _cores = new Wire[3];
    private readonly int _rail;
    private readonly int _supply;
    private readonly int _input;
    private readonly int _output;
    private readonly PiecewiseCurve _openCurve;
    private readonly PiecewiseCurve _closedCurve;
    private readonly LoopAnswer[] _answers = new LoopAnswer[2];
    private readonly bool[] _known = new bool[2];

    internal LoopCircuit(SensorLoopDescription description)
    {
        _description = description;
        ProximitySwitchDescription sensor = description.Switch;
        bool namur = sensor.Output == SwitchOutput.Namur;
        _rail = _circuit.AddNode("supply");
        _circuit.AddVoltageSource("supply", _rail, Circuit.Ground, description.SupplyV, description.SupplyOhms);
        _near[0] = namur ? _circuit.AddNode("amplifier") : _rail;
        _near[1] = Circuit.Ground;
        _near[2] = _circuit.AddNode("input");
        _supply = namur ? _circuit.AddVoltageSource("amplifier", _near[0], Circuit.Ground, description.Amplifier.OpenV, description.Amplifier.InsideOhms) : 0;
        for (int core = 0; core < 3; core++)
        {
            var name = (CableCore)core;
            _far[core] = _circuit.AddNode("switch " + CoreColours.ColourOf(name));
            _cores[core] = new Wire(_circuit, CoreColours.ColourOf(name), _near[core], _far[core], description.CoreOhms);
        }

        _input = namur
            ? _circuit.AddConductor("amplifier return", _near[2], Circuit.Ground, ReturnOhms)
            : _circuit.AddCurve("input", _near[2], Circuit.Ground, InputCurves.Of(description.Input));
        if (description.PullUpOhms < double.PositiveInfinity)
            _circuit.AddConductor("pull-up", _rail, _near[2], description.PullUpOhms);
        if (sensor.Output is SwitchOutput.Pnp or SwitchOutput.Npn)
            _circuit.AddCurve("switch's own current", _far[0], _far[1], OwnCurve(sensor.OwnCurrentA));
        int from = sensor.Output == SwitchOutput.Npn ? _far[2] : _far[0];
        int to = sensor.Output == SwitchOutput.Npn ? _far[1] : _far[2];
        _openCurve = OpenCurve(sensor.ResidualA);
        _closedCurve = ClosedCurve(sensor);
        _output = IsConductor ? _circuit.AddConductor("contact", from, to, double.PositiveInfinity) : _circuit.AddCurve("output", from, to, _openCurve);
    }

    private bool IsConductor => _description.Switch.Output is SwitchOutput.DryContact or SwitchOutput.Namur;

    internal void SetSupply(double volts)
    {
        _circuit.SetVoltage(0, volts, _description.SupplyOhms);
        Forget();
    }

    internal void SetBroken(CableCore core, bool broken)
    {
        _cores[(int)core].SetBroken(broken);
        Forget();
    }

    internal void SetExtraOhms(CableCore core, double ohms)
    {
        _cores[(int)core].SetExtraOhms(ohms);
        Forget();
    }

    internal void SetCoresShorted(CableCore core, CableCore other, bool shorted)
    {
        _cores[(int)core].SetBridge(_cores[(int)other], shorted ? ShortOhms : double.PositiveInfinity);
        Forget();
    }

    internal void SetToSupply(CableCore core, bool touches)
    {
        _cores[(int)core].SetToSupply(_rail, touches ? ShortOhms : double.PositiveInfinity);
        Forget();
    }

    internal void SetToGround(CableCore core, bool touches)
    {
        _cores[(int)core].SetToGround(touches ? ShortOhms : double.PositiveInfinity);
        Forget();
    }

    internal void SetSwapped(CableCore core, CableCore other, bool swapped)
    {
        MoveCore(core, swapped ? other : core);
        MoveCore(other, swapped ? core : other);
        Forget();
    }

    /// <summary>The circuit's answer with the output open or closed.</summary>
    internal LoopAnswer Answer(bool closed)
    {
        int index = closed ? 1 : 0;
        if (_known[index])
            return _answers[index];
        SetOutput(closed);
        _circuit.Solve();
        int returnNode = _description.Switch.Output == SwitchOutput.TwoWire ? _far[2] : _far[1];
        double supplied = _circuit.VoltageV(_far[0]) - _circuit.VoltageV(returnNode);
        _answers[index] = new LoopAnswer(
            _description.Switch.Output == SwitchOutput.Namur ? _circuit.VoltageV(_near[0]) : _circuit.VoltageV(_near[2]),
            _description.Switch.Output == SwitchOutput.Namur ? -_circuit.CurrentA(_supply) : _circuit.CurrentA(_input),
            double.IsNaN(supplied) ? 0 : supplied,
            _circuit.CurrentA(_output));
        _known[index] = true;
        return _answers[index];
    }

    private void MoveCore(CableCore core, CableCore to) =>
        _cores[(int)core].Move(_near[(int)core], _far[(int)to]);

    private void SetOutput(bool closed)
    {
        switch (_description.Switch.Output)
        {
            case SwitchOutput.DryContact:
                _circuit.SetOhms(_output, closed ? _description.Switch.ContactOhms : double.PositiveInfinity);
                break;
            case SwitchOutput.Namur:
                // What closes another switch makes this one draw low current.
                _circuit.SetOhms(_output, closed ? _description.Switch.NamurHighOhms : _description.Switch.NamurLowOhms);
                break;
            default:
                _circuit.SetCurve(_output, closed ? _closedCurve : _openCurve);
                break;
        }
    }

    private void Forget() => _known[0] = _known[1] = false;

    // Proof against swapped supply cores, as IEC 60947-5-2 switches commonly are: nothing flows backwards.
    private static PiecewiseCurve OwnCurve(double at24V) => new(new CurvePoint(-1, -1e-9), new CurvePoint(0, 0), new CurvePoint(24, at24V));

    private static PiecewiseCurve OpenCurve(double residualA)
    {
        double most = residualA + 1e-9;
        return new(new CurvePoint(-1, -1e-9), new CurvePoint(0, 0), new CurvePoint(1, most), new CurvePoint(61, (most * 1.001) + 1e-9));
    }

    private static PiecewiseCurve ClosedCurve(ProximitySwitchDescription sensor)
    {
        double cornerA = sensor.DropV * 1e-9;
        double limitV = sensor.DropV + (sensor.LimitA * OutputOhms);
        return new(
            new CurvePoint(-1, -1e-9),
            new CurvePoint(0, 0),
            new CurvePoint(sensor.DropV, cornerA),
            new CurvePoint(limitV, cornerA + sensor.LimitA),
            new CurvePoint(limitV + 100, (cornerA + sensor.LimitA) * 1.01));
    }
}
