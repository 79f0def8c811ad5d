namespace LubeController.Analysis.Specification;

/// <summary>Steps of a dose by pressure.</summary>
internal enum PressureStep
{
    /// <summary>None is under way.</summary>
    None,

    /// <summary>Pump off until the line has stood vented.</summary>
    Recharge,

    /// <summary>Pump on until pressure is reached.</summary>
    Pressurise,

    /// <summary>Pump on while pressure must last.</summary>
    Hold,

    /// <summary>Pump off until the line has stood vented; then the pressure cycle counts.</summary>
    Vent,
}

/// <summary>The line, and the progress of a dose by pressure.</summary>
internal record struct LineState
{
    /// <summary>Line pressure is reached.</summary>
    internal bool IsReached;

    /// <summary>The line is vented.</summary>
    internal bool IsVented;

    /// <summary>The step of the dose.</summary>
    internal PressureStep Step;

    /// <summary>Pressure cycles counted.</summary>
    internal int Cycles;

    /// <summary>How long pressure has been held, ms.</summary>
    internal int HeldMs;

    /// <summary>How long the dose has waited for the line to stand vented, ms.</summary>
    internal int VentingMs;

    /// <summary>How long the line has stood vented, ms.</summary>
    internal int VentedMs;
}
