namespace LubeController.Plant.Lubricant;

/// <summary>The lubricant's temperature: the one that was set, and what a fault adds.</summary>
internal sealed class LubricantTemperature
{
    /// <summary>The temperature that was set, K.</summary>
    internal required double SetK { get; set; }

    /// <summary>What a fault adds, K.</summary>
    internal double OffsetK { get; set; }

    /// <summary>Whether somebody measures it, so that another one makes a difference even where nothing flows.</summary>
    internal bool IsRead { get; set; }

    /// <summary>The temperature now, K.</summary>
    internal double NowK => SetK + OffsetK;
}
