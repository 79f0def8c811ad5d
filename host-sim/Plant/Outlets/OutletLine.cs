using System.Collections.Generic;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Outlets;

/// <summary>What stands behind an outlet: its line, its check valve and the point, or the volume that feeds another divider.</summary>
internal sealed class OutletLine
{
    private readonly OutletDescription _description;
    private Sum _delivered;
    private Sum _airOut;
    private Sum _lost;

    internal OutletLine(OutletDescription description, int node)
    {
        _description = description;
        Node = node;
    }

    /// <summary>The node that it feeds, or -1: a lubrication point.</summary>
    internal int Node { get; }

    /// <summary>The connected ports that feed it; none where an injector does.</summary>
    internal IReadOnlyList<PortDescription> Ports => _description.Ports;

    internal bool Blocked { get; set; }

    /// <summary>What is left of its conductance, 0 to 1.</summary>
    internal double Open { get; set; } = 1;

    /// <summary>Part of what it gets that is lost before the point, 0 to 1.</summary>
    internal double LostShare { get; set; }

    internal double AddedBackPressurePa { get; set; }

    /// <summary>Pressure to be overcome behind the port, Pa, where no node says it.</summary>
    internal double OffsetPa => SoundOffsetPa + AddedBackPressurePa;

    /// <summary>The same at a sound point.</summary>
    internal double SoundOffsetPa => _description.CheckValvePa + (Node < 0 ? _description.BackPressurePa : 0);

    internal bool HasLine => _description.LineLengthM > 0;

    internal double LineLengthM => _description.LineLengthM;

    internal double LineBoreM => _description.LineBoreM;

    /// <summary>Lubricant at the point since the start, m3.</summary>
    internal double DeliveredM3 => _delivered.Value;

    internal double AirOutM3 => _airOut.Value;

    internal double LostM3 => _lost.Value;

    /// <summary>What the planned step brings, m3.</summary>
    internal double StepLiquidM3 { get; set; }

    internal double StepAirM3 { get; set; }

    /// <summary>Flow to the point now, m3/s.</summary>
    internal double FlowM3PerS { get; set; }

    internal double FlowBeforeM3PerS { get; set; }

    internal double DeliveredAfter(double part) => _delivered.Value + (part * StepLiquidM3 * (1 - LostShare));

    internal double LostAfter(double part) => _lost.Value + (part * StepLiquidM3 * LostShare);

    internal double AirOutAfter(double part) => _airOut.Value + (part * StepAirM3);

    internal void Commit(double part)
    {
        _delivered.Add(part * StepLiquidM3 * (1 - LostShare));
        _lost.Add(part * StepLiquidM3 * LostShare);
        _airOut.Add(part * StepAirM3);
    }
}
