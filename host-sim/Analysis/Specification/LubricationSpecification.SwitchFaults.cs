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

    /// <summary>A pulse of one switch is a witness against each other one that is still.</summary>
    private void Witness(int index)
    {
        for (int other = 0; other < _state.Switches.Length; other++)
        {
            if (other != index)
                _state.Switches[other].Witnesses.Add(index);
        }
    }

    /// <summary>All edges of a scan come at one instant: who gave one in it is not proved wrong by another's.</summary>
    private void JudgeWitnesses()
    {
        foreach (ref SwitchState one in _state.Switches.AsSpan())
            one.Proved |= _settings.WitnessPulses > 0 && one.Witnesses.Most >= _settings.WitnessPulses;
    }

    /// <summary>Whoever is found wrong is not believed until reset has cleared the alarm, though its condition ends before.</summary>
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

    /// <summary>Who has seen that the dose-ending switch is at fault has seen the alarm; the other way round not.</summary>
    private void AcknowledgeWithTheWorse(AlarmId began)
    {
        if (began == AlarmId.OtherSwitchFault && _state.Alarms[(int)AlarmId.CycleSwitchFault] is { Active: true, Lifecycle: Lifecycle.Acknowledged })
            Fire(began, LifecycleEvent.Acknowledge);
    }
}
