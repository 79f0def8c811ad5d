using System;

namespace LubeController.Analysis.Specification;

/// <summary>
/// What proves a cycle switch wrong. The rules know one alarm for it, which is worse where the dose-ending switch is at fault;
/// here it is two rows, and a reset clears neither before both conditions have ended.
/// </summary>
public sealed partial class LubricationSpecification
{
    /// <summary>The timer of a switch that is not believed runs on; only that of the switch that ends the dose may still end a try.</summary>
    private bool TimerIsJudged(int index) =>
        !_state.Switches[index].Faulty || (index == _settings.DoseEndingSwitch && _settings.DoseMode == DoseMode.Cycles);

    private AlarmId FaultOf(int index) => index == _settings.DoseEndingSwitch ? AlarmId.CycleSwitchFault : AlarmId.OtherSwitchFault;

    private static bool IsSwitchFault(AlarmId alarm) => alarm is AlarmId.CycleSwitchFault or AlarmId.OtherSwitchFault;

    private static AlarmId OtherRowOf(AlarmId fault) =>
        fault == AlarmId.CycleSwitchFault ? AlarmId.OtherSwitchFault : AlarmId.CycleSwitchFault;

    private bool SwitchFault(AlarmId row)
    {
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            if (FaultOf(index) == row && _state.Switches[index].IsWrong)
                return true;
        }

        return false;
    }

    /// <summary>
    /// A pulse of one switch is a witness against each other one that is still. Which of two edges in one scan came first nobody
    /// can tell: they are taken in the order of the switches, so that the last pulse of a witness may come just before the edge
    /// that it misses.
    /// </summary>
    private void Witness(int index)
    {
        for (int other = 0; other < _state.Switches.Length; other++)
        {
            if (other == index)
                continue;
            ref SwitchState still = ref _state.Switches[other];
            still.Witnesses.Add(index);
            still.Proved |= _settings.WitnessPulses > 0 && still.Witnesses.Most >= _settings.WitnessPulses;
        }
    }

    /// <summary>
    /// Whoever is found wrong is not believed until reset has cleared the alarm, though its condition ends before. The edge that
    /// completes a proof, which only a debounce shorter than a scan lets through, came before the alarm stood: it is believed.
    /// </summary>
    private void DistrustWrongSwitches()
    {
        for (int index = 0; index < _state.Switches.Length; index++)
            _state.Switches[index].Faulty |= _state.Switches[index].IsWrong || _inputs.Sees(FaultOf(index));
    }

    /// <summary>What a witness proved only a running pump can show.</summary>
    private void EndProofs()
    {
        bool proved = false;
        foreach (ref SwitchState one in _state.Switches.AsSpan())
        {
            proved |= one.Proved;
            one.Proved = false;
            one.Witnesses = default;
        }

        if (!proved)
            return;
        EndProof(AlarmId.CycleSwitchFault);
        EndProof(AlarmId.OtherSwitchFault);
    }

    private void EndProof(AlarmId row)
    {
        if (SwitchFault(row))
            return;
        _began &= ~(1UL << (int)row);
        EndAtOnce(row);
    }

    private void BelieveWhereFaultIsCleared()
    {
        if (_state.Alarms[(int)AlarmId.CycleSwitchFault].Stands || _state.Alarms[(int)AlarmId.OtherSwitchFault].Stands)
            return;
        foreach (ref SwitchState one in _state.Switches.AsSpan())
            one.Faulty = false;
    }

    /// <summary>One alarm has one category: what is a failure by the dose-ending switch is not announced as less by another.</summary>
    private bool HasBecomeWorse(AlarmId alarm) =>
        alarm == AlarmId.OtherSwitchFault && _state.Alarms[(int)AlarmId.CycleSwitchFault].Stands;

    /// <summary>
    /// An alarm that is active and acknowledged is raised again only where it becomes a failure: who has seen the fault of the
    /// dose-ending switch, be it latched only, has seen that of another, but not the other way round.
    /// </summary>
    private bool HasBeenSeen(AlarmId began) =>
        _state.Alarms[(int)OtherRowOf(began)] is { Active: true, Lifecycle: Lifecycle.Acknowledged }
        && (began == AlarmId.OtherSwitchFault || _state.Alarms[(int)began].Lifecycle == Lifecycle.Latched);
}
