namespace LubeController.Plant.Pistons;

/// <summary>Where a piston stands, as far as the ways that it opens are concerned.</summary>
internal enum PistonPosition : byte
{
    AtL,
    AtR,
    MidTravel,
}
