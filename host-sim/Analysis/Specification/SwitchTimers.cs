namespace LubeController.Analysis.Specification;

/// <summary>The timers of the cycle switches, in pump-on time of doses, with their retries and the first-pulse allowance.</summary>
internal sealed class SwitchTimers(SpecSettings settings, SpecState state, AlarmBook alarms, Phases phases)
{
    /// <summary>Counts pump-on time of a dose.</summary>
    internal void Charge(int elapsedMs)
    {
        foreach (SwitchState one in state.Switches)
            one.TimerMs += elapsedMs;
    }

    /// <summary>The pump was started for a dose: the first pulse has to wait for pressure. The timer is not renewed.</summary>
    internal void AllowFirstPulse()
    {
        if (settings.DoseEndingSwitch < state.Switches.Length)
            state.Switches[settings.DoseEndingSwitch].AllowanceMs = settings.FirstPulseAllowanceMs;
    }

    /// <summary>A new try has one timeout with allowance and no retries, since its timers have run out already.</summary>
    internal void GrantTry()
    {
        for (int index = 0; index < state.Switches.Length; index++)
        {
            SwitchState one = state.Switches[index];
            one.RetriesUsed = settings.Switches[index].Retries;
            one.TimerMs = (long)one.RetriesUsed * settings.Switches[index].TimeoutMs;
            one.AllowanceMs = 0;
        }
    }

    /// <summary>A reset renews all of them.</summary>
    internal void Reset()
    {
        for (int index = 0; index < state.Switches.Length; index++)
            state.Switches[index].Renew(index == settings.DoseEndingSwitch ? settings.FirstPulseAllowanceMs : 0);
    }

    /// <summary>
    /// The timer of a switch that is not believed runs on; only that of the switch that ends the dose may still end a try.
    /// </summary>
    internal void EndThoseRunOut()
    {
        for (int index = 0; index < state.Switches.Length; index++)
        {
            if (!state.Switches[index].Faulty || (index == settings.DoseEndingSwitch && settings.DoseMode == DoseMode.Cycles))
                EndIfRunOut(state.Switches[index], settings.Switches[index]);
        }
    }

    /// <summary>
    /// A timeout is over when the timer reaches retries used + 1 timeouts, plus the allowance: so the allowance counts once
    /// between two edges, whatever happens in between.
    /// </summary>
    private void EndIfRunOut(SwitchState one, SwitchSettings own)
    {
        if (one.TimerMs < one.AllowanceMs + ((one.RetriesUsed + 1L) * own.TimeoutMs))
            return;
        if (one.RetriesUsed < own.Retries)
        {
            one.RetriesUsed++;
            phases.Fire(PhaseEvent.TimeoutRetriesLeft);
        }
        else
        {
            alarms.FailDose(AlarmId.DividerStalled);
        }
    }
}
