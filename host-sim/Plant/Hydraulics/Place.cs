namespace LubeController.Plant.Hydraulics;

/// <summary>Where a piston stands, as far as the ways that it opens are concerned.</summary>
internal enum Place : byte
{
    AtL,
    AtR,
    MidTravel,
}
