namespace LubeController.Analysis.Specification;

/// <summary>Two sensors that say what cannot both be true.</summary>
public sealed partial class LubricationSpecification
{
    /// <summary>What the shaft shows counts for the rest: a machine that turns is lubricated, whatever its running signal says.</summary>
    private bool MachineTurns => MachineRuns || _state.Held.ShaftTurnsOn;

    /// <summary>
    /// A pulse of a shaft that has not said standstill for the whole run-down shows that it turns on; standstill, or the
    /// machine running, ends that. A power cut begins the run-down anew, since the shaft was not heard meanwhile; the latch
    /// keeps what was found before.
    /// </summary>
    private void CompareShaft()
    {
        if (_settings.RunDownMs == 0 || !_settings.HasShaft)
            return;
        ref Clocks clocks = ref _state.Clocks;
        bool runs = _state.Levels.MachineRunning is { Known: true, Level: true };
        bool stands = clocks.ShaftStillMs >= _settings.ShaftStandstillMs;

        // It said standstill in the scan before: a pulse in this one began to turn it.
        if (_shaftStood)
            clocks.RunDownMs = _inputs.ShaftPulseAgeMs;
        if (runs || stands)
        {
            clocks.RunDownMs = 0;
            _state.Held.ShaftTurnsOn = false;
        }
        else if (_inputs.ShaftPulses > 0 && clocks.RunDownMs - _inputs.ShaftPulseAgeMs >= _settings.RunDownMs)
        {
            _state.Held.ShaftTurnsOn = true;
        }
    }

    /// <summary>
    /// One alarm tells several comparisons, of which a reset ends those that only a running pump can show: so it does not wait for
    /// the delay off, unless the shaft turns on now.
    /// </summary>
    private void EndDisagreement()
    {
        if (!_state.Held.ShaftTurnsOn && !_inputs.Sees(AlarmId.SensorsDisagree))
            EndAtOnce(AlarmId.SensorsDisagree);
    }
}
