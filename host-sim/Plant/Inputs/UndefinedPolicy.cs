namespace LubeController.Plant.Inputs;

/// <summary>What an input makes of what its standard leaves undefined.</summary>
public enum UndefinedPolicy
{
    /// <summary>Takes it for off.</summary>
    Low,

    /// <summary>Takes it for on.</summary>
    High,

    /// <summary>Keeps the level it had; off before the first.</summary>
    Hold,

    /// <summary>Draws a level from a seed each time the undefined zone is entered.</summary>
    Seeded,
}
