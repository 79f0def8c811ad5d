namespace LubeController.Plant.Line;

/// <summary>The vent valve of a single-line system and its coil.</summary>
/// <param name="description">The valve; null where the plant has only the coil's wire.</param>
internal sealed class VentValve(VentValveDescription? description)
{
    /// <summary>Whether the coil is driven.</summary>
    internal bool Coil { get; set; }

    internal bool StuckOpen { get; set; }

    internal bool StuckClosed { get; set; }

    /// <summary>Whether a sound valve would be open.</summary>
    internal bool CommandedOpen => description is { } vent && (vent.NormallyOpen ? !Coil : Coil);

    /// <summary>What it lets through to the reservoir at reference viscosity, m3/s per Pa; 0 while closed.</summary>
    internal double OpenM3PerSPa => description is { } vent && (StuckOpen || (!StuckClosed && CommandedOpen)) ? vent.OpenM3PerSPa : 0;
}
