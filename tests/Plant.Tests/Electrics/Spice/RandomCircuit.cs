using LubeController.Plant.Circuits;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>A circuit drawn from a seed, built for both simulators at once.</summary>
internal sealed class RandomCircuit
{
    private static readonly PiecewiseCurve[] Drawn =
    [
        Curves.Diode(0.7, 0.5), Curves.Clamp(33, 1), Curves.Lamp(24, 5),
        InputCurves.Of(InputType.Type1), InputCurves.Of(InputType.Type2), InputCurves.Of(InputType.Type3),
    ];

    private readonly Deck _deck = new();
    private readonly TestNumbers _numbers;
    private readonly int _nodes;

    internal RandomCircuit(ulong seed)
    {
        _numbers = new TestNumbers(seed);
        _nodes = 3 + _numbers.Below(10);
        for (int node = 1; node <= _nodes; node++)
            Circuit.AddNode(Name(node));
        AddSource(1, 0, 24, _numbers.Below(2) * 0.2);
        int elements = _nodes + _numbers.Below(2 * _nodes);
        for (int element = 0; element < elements; element++)
            AddOne();
    }

    internal Circuit Circuit { get; } = new();

    // Blocked diodes leak through 1e9 ohm; the shunt must not be seen beside that.
    internal string Netlist => _deck.Finish("1e15");

    internal static string Name(int node) => node == 0 ? "0" : "n" + node;

    private void AddOne()
    {
        int a = _numbers.Below(_nodes + 1);
        int b = (a + 1 + _numbers.Below(_nodes)) % (_nodes + 1);
        switch (_numbers.Below(10))
        {
            case < 5:
                AddResistor(a, b, _numbers.Decades(0.1, 1e5));
                break;
            case < 8:
                PiecewiseCurve curve = Drawn[_numbers.Below(Drawn.Length)];
                Circuit.AddCurve("curve", a, b, curve);
                _deck.Curve(Name(a), Name(b), curve);
                break;
            case 8:
                AddSource(a, b, _numbers.Between(-30, 30), _numbers.Decades(0.05, 1e4));
                break;
            default:
                // Its two ends are tied to ground, or its current might have nowhere to go.
                double amps = _numbers.Between(-0.02, 0.02);
                AddResistor(a == 0 ? b : a, 0, 1e4);
                AddResistor(b == 0 ? a : b, 0, 1e4);
                Circuit.AddCurrentSource("current", a, b, amps);
                _deck.CurrentSource(Name(a), Name(b), amps);
                break;
        }
    }

    private void AddResistor(int a, int b, double ohms)
    {
        Circuit.AddConductor("resistor", a, b, ohms);
        _deck.Resistor(Name(a), Name(b), ohms);
    }

    private void AddSource(int plus, int minus, double volts, double ohms)
    {
        Circuit.AddVoltageSource("source", plus, minus, volts, ohms);
        _deck.VoltageSource(Name(plus), Name(minus), volts, ohms);
    }
}
