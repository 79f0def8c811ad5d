namespace LubeController.Plant.Circuits;

/// <summary>A wire: two halves with a point between them, where insulation may fail.</summary>
internal sealed class Wire(int middle, double ohms)
{
    internal int Middle { get; } = middle;

    internal double Ohms { get; } = ohms;

    internal bool Broken { get; set; }

    internal double ExtraOhms { get; set; }

    internal int FirstHalf { get; set; }

    internal int SecondHalf { get; set; }

    internal int ToSupply { get; set; }

    internal int ToGround { get; set; }
}

/// <summary>A place where two wires may touch.</summary>
/// <param name="First">One wire.</param>
/// <param name="Second">The other.</param>
/// <param name="Conductor">What joins their middles.</param>
internal readonly record struct WireBridge(int First, int Second, int Conductor)
{
    internal bool Joins(int wire) => First == wire || Second == wire;
}
