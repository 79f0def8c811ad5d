using LubeController.Plant.Faults;

namespace LubeController.Plant.Electrics.Wiring;

/// <summary>One kind of wiring fault, told as the plant's registry of faults tells its own.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Lower-case name, for instance <c>wire-open</c>.</param>
/// <param name="Place">The part that changes, in words.</param>
/// <param name="Manner">How it fails.</param>
/// <param name="Effect">What changes physically: one sentence.</param>
/// <param name="Noticed">What a person at the machine would notice: one sentence.</param>
/// <param name="Needs">What must happen while it is set for it to take effect; goes on after "it needs".</param>
/// <param name="Parameter">Its resistance, or null where it has none.</param>
public sealed record WiringFaultInfo(
    WiringFaultKind Kind,
    string Name,
    string Place,
    FaultManner Manner,
    string Effect,
    string Noticed,
    string Needs,
    FaultParameter? Parameter)
{
    /// <summary>What healing brings back: one sentence.</summary>
    public string HealingNote { get; init; } = "Conducts again at once when repaired.";
}
