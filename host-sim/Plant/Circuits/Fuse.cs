namespace LubeController.Plant.Circuits;

/// <summary>A conductor that opens for good beyond its rating.</summary>
internal sealed class Fuse(int conductor, double ratedA, double wholeOhms)
{
    internal int Conductor { get; } = conductor;

    internal double RatedA { get; } = ratedA;

    internal double WholeOhms { get; } = wholeOhms;

    internal bool Blown { get; set; }
}
