namespace LubeController.Analysis.Specification;

/// <summary>What switch and transmitter say of the line's pressure.</summary>
internal sealed class LinePressure(SpecSettings settings, SpecState state, SpecScan scan)
{
    /// <summary>Pressure is above its limit.</summary>
    internal bool IsOverLimit => scan.Inputs.PressurePa > settings.OverpressurePa || (SwitchShowsLimit && state.Levels.Pressure.Level);

    /// <summary>Whether the limit is watched by inputs that are all known.</summary>
    internal bool LimitIsKnown => !SwitchShowsLimit || state.Levels.Pressure.Known;

    /// <summary>4 to 20 mA stand for 0 to the span: 3.6 mA is a fortieth of it below, 21 mA a sixteenth above (NAMUR NE 43).</summary>
    internal bool SignalIsLost => HasTransmitter && settings.PressureSpanPa > 0
        && (scan.Inputs.PressurePa < -(settings.PressureSpanPa / 40) || scan.Inputs.PressurePa > settings.PressureSpanPa + (settings.PressureSpanPa / 16));

    /// <summary>A switch just powered up is heard first.</summary>
    internal bool IsKnown => !SwitchShowsReached || state.Levels.Pressure.Known;

    private bool HasTransmitter => settings.OverpressurePa is not null;

    private bool SwitchShowsReached => settings.PressureSwitchUse == PressureSwitchUse.Reached;

    private bool SwitchShowsLimit => settings.PressureSwitchUse == PressureSwitchUse.Limit;

    /// <summary>In a dose by pressure switch and transmitter must both show pressure, or both none; elsewhere either shows it.</summary>
    [RegressionModel("what counts as reached and as vented where both a switch and a transmitter are fitted")]
    internal void Accept()
    {
        state.Levels.Pressure.Accept(scan.Inputs.PressureSwitch, settings.PressureDebounceMs);
        bool bySwitch = SwitchShowsReached && state.Levels.Pressure.Level;
        bool byTransmitter = HasTransmitter && scan.Inputs.PressurePa >= settings.PressureReachedPa;
        bool both = SwitchShowsReached && HasTransmitter && settings.DoseMode == DoseMode.Pressure;
        ref LineState line = ref state.Line;
        line.IsReached = both ? bySwitch && byTransmitter : bySwitch || byTransmitter;
        line.IsVented = IsKnown && !bySwitch && (!HasTransmitter || scan.Inputs.PressurePa <= settings.PressureVentedPa);
        if (line.IsReached)
            state.Dose.PressureMissingMs = 0;
        if (IsKnown && !line.IsVented)
            line.VentedMs = 0;
    }
}
