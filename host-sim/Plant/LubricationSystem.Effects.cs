using LubeController.Plant.Faults;

namespace LubeController.Plant;

/// <summary>Whether faults made a difference: a fault that never did was not put to the test.</summary>
public sealed partial class LubricationSystem
{
    private readonly FaultLog _log = new();

    /// <summary>
    /// Every application of a fault so far, and whether it made a difference. Differences are seen at events; call
    /// <see cref="NoteFaultEffects"/> before reading it at another time.
    /// </summary>
    public FaultLog FaultLog => _log;

    /// <summary>Whether a fault on a part made a difference at any event so far.</summary>
    public bool TookEffect(FaultKind kind, string part = "") => _log.TookEffect(kind, part);

    /// <summary>Looks now which of the faults in place make a difference, as each event does. Changes nothing else.</summary>
    public void NoteFaultEffects() => NoteEffects();

    private void NoteEffects()
    {
        if (_log.Waiting == 0)
            return;
        for (int i = 0; i < _faults.Count; i++)
        {
            ActiveFault fault = _faults[i];
            if (!_log.Entries[fault.Entry].TookEffect && !IsHarmless(in fault) && MakesDifference(in fault))
                _log.MarkEffect(fault.Entry, NowUs);
        }
    }

    // A fault that grows begins with a magnitude that changes nothing.
    private static bool IsHarmless(in ActiveFault fault) => FaultCatalogue.Of(fault.Kind).Parameter is { Harmless: { } harmless } && fault.Value == harmless;

    private bool MakesDifference(in ActiveFault fault) => FaultCatalogue.Of(fault.Kind).Part switch
    {
        FaultPart.CycleSwitch => _switches[FindCycleSwitch(fault.Part)].Differs(fault.Kind),
        FaultPart.Sensor or FaultPart.SensorCore or FaultPart.SensorCorePair => SensedSwitch(fault.Part).Differs(fault.Kind),
        FaultPart.LevelSwitch => (fault.Part == "low" ? _reservoir.Low : _reservoir.Empty).Differs(fault.Kind == FaultKind.LevelSwitchStuckOn),
        FaultPart.PressureSwitch => _pressureSwitch!.Differs(fault.Kind == FaultKind.PressureSwitchStuckOn),
        FaultPart.ControlSupply => SupplyEffect(),
        FaultPart.Shaft => TheShaft.MissedPulse(NowUs),
        FaultPart.Wire or FaultPart.WirePair or FaultPart.WiringContact or FaultPart.Lamp or FaultPart.Fuse => TheWiring.MakesDifference(fault.Kind, fault.Part),
        _ => HydraulicEffect(in fault),
    };
}
