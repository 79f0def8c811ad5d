namespace LubeController.Plant.Circuits;

/// <summary>
/// The equations of a circuit by modified nodal analysis: one unknown for each node's voltage, one for each voltage source's
/// current, every curve on the piece in force.
/// </summary>
internal sealed class Equations(Netlist netlist)
{
    private readonly Islands _islands = new();
    private readonly LinearSolver _solver = new();
    private int[] _unknown = [];
    private bool[] _floating = [];

    /// <summary>Number of unknowns.</summary>
    internal int Count { get; private set; }

    internal bool IsFloating(int node) => _floating[node];

    /// <summary>Whether something that conducts joins both ends of an element.</summary>
    internal bool Joins(Element element) => _islands.ReferenceOf(element.A) == _islands.ReferenceOf(element.B);

    /// <summary>Numbers the unknowns of the circuit as it stands.</summary>
    /// <exception cref="CircuitException">Ideal sources form a ring, or a current source has nowhere to go.</exception>
    internal void Number()
    {
        int nodes = netlist.NodeCount;
        if (_unknown.Length < nodes)
        {
            _unknown = new int[nodes];
            _floating = new bool[nodes];
        }

        _islands.RefuseIdealRings(nodes, netlist.Elements);
        _islands.Find(nodes, netlist.Elements);
        RefuseStrandedCurrents();
        Count = 0;
        for (int node = 0; node < nodes; node++)
        {
            // An island's lowest node stands at zero: ground on its own island, and on one that floats, where only
            // differences mean anything.
            int reference = _islands.ReferenceOf(node);
            _unknown[node] = reference == node ? -1 : Count++;
            _floating[node] = reference != Circuit.Ground;
        }

        foreach (Element element in netlist.Elements)
        {
            if (element.Kind == ElementKind.VoltageSource && !element.Removed)
                element.Branch = Count++;
        }
    }

    /// <summary>Solves for all unknowns, with every curve on the piece in force.</summary>
    /// <exception cref="CircuitException">The equations leave an unknown open.</exception>
    internal void Solve(double[] answer)
    {
        _solver.Clear(Count);
        foreach (Element element in netlist.Elements)
            Stamp(element, _unknown[element.A], _unknown[element.B]);
        int open = _solver.Solve(answer);
        if (open >= 0)
            throw new CircuitException($"the equations leave unknown {open} open; this is a fault of the solver, for the circuit was checked");
    }

    /// <summary>Spreads the voltages among a solution's unknowns over the nodes.</summary>
    internal void SpreadVoltages(double[] solution, double[] volts)
    {
        for (int node = 0; node < netlist.NodeCount; node++)
            volts[node] = _unknown[node] < 0 ? 0 : solution[_unknown[node]];
    }

    private void RefuseStrandedCurrents()
    {
        foreach (Element element in netlist.Elements)
        {
            if (element.Kind == ElementKind.CurrentSource && !element.Removed && element.Value != 0 && !Joins(element))
                throw new CircuitException($"current source '{element.Name}' drives {element.Value} A where nothing leads back: give it a path, or take it out");
        }
    }

    private void Stamp(Element element, int a, int b)
    {
        switch (element.Kind)
        {
            case ElementKind.Conductor:
                StampConductance(a, b, element.ConductanceS);
                break;
            case ElementKind.Curve when !element.Removed:
                StampConductance(a, b, element.Curve!.SlopeS(element.Piece));
                StampCurrent(a, b, element.Curve.OffsetA(element.Piece));
                break;
            case ElementKind.CurrentSource when !element.Removed:
                StampCurrent(a, b, element.Value);
                break;
            case ElementKind.VoltageSource when !element.Removed:
                _solver.Add(a, element.Branch, 1);
                _solver.Add(b, element.Branch, -1);
                _solver.Add(element.Branch, a, 1);
                _solver.Add(element.Branch, b, -1);
                _solver.Add(element.Branch, element.Branch, -element.SeriesOhms);
                _solver.AddRight(element.Branch, element.Value);
                break;
            default:
                break;
        }
    }

    private void StampConductance(int a, int b, double conductance)
    {
        _solver.Add(a, a, conductance);
        _solver.Add(b, b, conductance);
        _solver.Add(a, b, -conductance);
        _solver.Add(b, a, -conductance);
    }

    private void StampCurrent(int a, int b, double amps)
    {
        _solver.AddRight(a, -amps);
        _solver.AddRight(b, amps);
    }
}
