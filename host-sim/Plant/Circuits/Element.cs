namespace LubeController.Plant.Circuits;

/// <summary>What an element is; told apart only where the equations differ.</summary>
internal enum ElementKind
{
    /// <summary>Current in proportion to voltage; a conductance of zero is an open circuit.</summary>
    Conductor,

    /// <summary>A voltage behind a resistance, which may be zero.</summary>
    VoltageSource,

    /// <summary>A current that flows whatever the voltage.</summary>
    CurrentSource,

    /// <summary>Current by a curve.</summary>
    Curve,
}

/// <summary>One element between two nodes. Current counts from A through the element to B.</summary>
internal sealed class Element(string name, ElementKind kind, int a, int b)
{
    internal string Name { get; } = name;

    internal ElementKind Kind { get; } = kind;

    internal int A { get; set; } = a;

    internal int B { get; set; } = b;

    /// <summary>Conductance of a conductor, S; 0 is open.</summary>
    internal double ConductanceS { get; set; }

    /// <summary>Voltage of a source, V from B up to A; current of a current source, A.</summary>
    internal double Value { get; set; }

    /// <summary>Resistance inside a voltage source.</summary>
    internal double SeriesOhms { get; set; }

    internal PiecewiseCurve? Curve { get; set; }

    /// <summary>The piece of the curve in force.</summary>
    internal int Piece { get; set; }

    /// <summary>Whether a source or a curve is taken out: then nothing flows.</summary>
    internal bool Removed { get; set; }

    /// <summary>Which unknown is the current of this voltage source.</summary>
    internal int Branch { get; set; }

    /// <summary>Whether a voltage on one side settles the other.</summary>
    internal bool Connects => Kind switch
    {
        ElementKind.Conductor => ConductanceS > 0,
        ElementKind.CurrentSource => false,
        _ => !Removed,
    };
}
