namespace LubeController.Plant.Pistons;

/// <summary>One of the two ends of a piston's travel, and the port that is discharged while it moves there.</summary>
public enum Side
{
    /// <summary>The left end; travel 0.</summary>
    L,

    /// <summary>The right end; travel 1.</summary>
    R,
}
