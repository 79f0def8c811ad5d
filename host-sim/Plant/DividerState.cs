namespace LubeController.Plant;

/// <summary>What the divider does.</summary>
public enum DividerState
{
    /// <summary>Nothing moves, though a piston would if the pressure were there.</summary>
    Idle,

    /// <summary>At least one piston moves.</summary>
    Moving,

    /// <summary>Nothing can move: each piston that has its way open is kept by a blocked outlet, or the inlet is blocked.</summary>
    Blocked,

    /// <summary>Nothing can move: all pistons stand in mid-travel, and no land clearance lets one creep.</summary>
    HydraulicallyLocked,
}
