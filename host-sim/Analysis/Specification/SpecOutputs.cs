namespace LubeController.Analysis.Specification;

/// <summary>What a scan shows.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Pump">The pump is on.</param>
/// <param name="VentValve">The vent valve is energised; off where doses do not end by pressure.</param>
/// <param name="HealthyRelay">The healthy relay is energised.</param>
/// <param name="WarningOutput">The warning output is on.</param>
/// <param name="Lamp">The lamp is on.</param>
/// <param name="FunctionCheck">An output test moves relay, warning output and lamp.</param>
/// <param name="DoseCompleted">A dose was completed in this scan.</param>
/// <param name="Refused">Presses of this scan that were refused.</param>
/// <param name="FirstUp">The alarm that came first since last none stood and none waited to be acknowledged, or null.</param>
public readonly record struct SpecOutputs(
    Phase Phase, bool Pump, bool VentValve, bool HealthyRelay, bool WarningOutput, bool Lamp, bool FunctionCheck, bool DoseCompleted,
    Buttons Refused, AlarmId? FirstUp);

/// <summary>One alarm as a person sees it.</summary>
/// <param name="Lifecycle">Its lifecycle state.</param>
/// <param name="Active">Its condition is present, delays included.</param>
/// <param name="Latched">Its latch is set.</param>
/// <param name="ShelvedMs">Remaining shelving time, ms; 0 unless shelved.</param>
/// <param name="FirstUp">It came first of those that stand.</param>
public readonly record struct AlarmView(Lifecycle Lifecycle, bool Active, bool Latched, int ShelvedMs, bool FirstUp)
{
    /// <summary>Whether it stands: active or latched.</summary>
    public bool Stands => Active || Latched;
}
