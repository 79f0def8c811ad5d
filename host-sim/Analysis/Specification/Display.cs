using System;

namespace LubeController.Analysis.Specification;

/// <summary>What the outputs show.</summary>
internal sealed class Display(SpecSettings settings, SpecState state, SpecScan scan, StandingAlarms standing)
{
    private const int LampHalfPeriodMs = 250;

    /// <summary>Flashing, on first, while an alarm waits to be acknowledged; steady while one stands; else dark.</summary>
    [RegressionModel("the pattern of the lamp")]
    private bool Lamp => standing.AnyWaits ? state.LampMs < LampHalfPeriodMs : standing.AnyShown;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (standing.AnyWaits)
            state.LampMs = (int)(((long)state.LampMs + elapsedMs) % (2 * LampHalfPeriodMs));
    }

    /// <summary>Flashing begins again with the next alarm that waits.</summary>
    internal void EndFlashing()
    {
        if (!standing.AnyWaits)
            state.LampMs = 0;
    }

    /// <summary>The outputs as they are now.</summary>
    internal SpecOutputs Show()
    {
        var shown = new SpecOutputs(
            state.Phase,
            state.Pump.On,
            VentValve: settings.DoseMode == DoseMode.Pressure && state.Pump.On == settings.VentValveNormallyOpen,
            HealthyRelay: !standing.AnyFailure,
            WarningOutput: state.Phase is Phase.Stopped or Phase.Prime || standing.AnyWarning,
            Lamp,
            FunctionCheck: false,
            scan.DoseCompleted,
            scan.Refused,
            state.FirstUp);
        return state.Phase == Phase.OutputTest ? Test(shown) : shown;
    }

    /// <summary>Everything is off until the first scan after a power-up.</summary>
    internal SpecOutputs ShowPowerUp() =>
        new(state.Phase, false, false, false, false, false, false, false, Buttons.None, state.FirstUp);

    [RegressionModel("in which order, and for how long each, an output test moves relay, warning output and lamp")]
    private SpecOutputs Test(SpecOutputs shown)
    {
        int quarter = state.PhaseMs / Math.Max(1, settings.OutputTestMs / 4);
        return shown with { HealthyRelay = quarter != 0, WarningOutput = quarter is 1 or 3, Lamp = quarter is 2 or 3, FunctionCheck = true };
    }
}
