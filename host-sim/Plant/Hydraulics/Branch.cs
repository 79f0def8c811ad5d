namespace LubeController.Plant.Hydraulics;

/// <summary>Whose flow a branch carries.</summary>
internal enum BranchKind : byte
{
    /// <summary>Along the line, between two nodes.</summary>
    Line,

    /// <summary>Through the relief valve to the reservoir.</summary>
    Relief,

    /// <summary>Through the vent valve to the reservoir.</summary>
    Vent,

    /// <summary>Back through the pump's outlet check valve to the reservoir.</summary>
    CheckValve,

    /// <summary>Out of the line to nowhere.</summary>
    Leak,

    /// <summary>Behind a moving piston of a divider, and out of its other chamber.</summary>
    Stroke,

    /// <summary>Past a divider's piston.</summary>
    Bypass,

    /// <summary>Behind a discharging injector's piston, and out of its measuring chamber.</summary>
    Injector,
}

/// <summary>One way that flow takes now. Positive from <see cref="From"/>.</summary>
internal struct Branch
{
    /// <summary>Whose it is.</summary>
    internal BranchKind Kind;

    /// <summary>Number of the part among those of its kind; of a divider's part, within its divider.</summary>
    internal int Part;

    /// <summary>Number of the divider, of those kinds that have one.</summary>
    internal int Unit;

    /// <summary>Number of the outlet that receives it, or -1.</summary>
    internal int Outlet;

    /// <summary>The node that it leaves.</summary>
    internal int From;

    /// <summary>The node that it enters, or -1: out of the network.</summary>
    internal int To;

    /// <summary>Pressure that must be overcome besides the drop, Pa.</summary>
    internal double OffsetPa;

    /// <summary>Factor on the flow.</summary>
    internal double Weight;

    /// <summary>Flow over drop; null: in proportion, by <see cref="Conductance"/>.</summary>
    internal FlowTable? Table;

    /// <summary>Flow per drop where there is no table, m3/s per Pa.</summary>
    internal double Conductance;

    /// <summary>Whether nothing flows backwards.</summary>
    internal bool OneWay;
}
