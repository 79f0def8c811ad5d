namespace LubeController.Analysis.Specification;

/// <summary>Edges and pulses of the cycle switches.</summary>
internal sealed class CycleSwitches(SpecSettings settings, SpecState state, SpecScan scan, AlarmBook alarms, Pump pump, SwitchFaults faults, Dosing dose)
{
    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        bool supplyLow = state.Alarm(AlarmId.SupplyLow).Active;
        if (!supplyLow)
            state.ReadyMs = Durations.Less(state.ReadyMs, elapsedMs);
        foreach (SwitchState one in state.Switches)
            one.Pass(elapsedMs, settings.ShortestPulseIntervalMs);
    }

    /// <summary>Sees the levels of this scan. No edge counts while the supply is low.</summary>
    internal void Accept()
    {
        if (state.Alarm(AlarmId.SupplyLow).Active)
            return;
        for (int index = 0; index < state.Switches.Length; index++)
        {
            SwitchState one = state.Switches[index];
            SwitchSettings own = settings.Switches[index];
            bool raw = (scan.Inputs.CycleSwitches >> index & 1) != 0;
            if (settings.ChatterChanges > 0)
                one.Chatter.Count(one.Filter.Changes(raw), settings.ChatterChanges, settings.ChatterWindowMs);
            bool changed = one.Filter.Accept(raw, own.DebounceMs ?? settings.SwitchDebounceMs, state.ReadyMs == 0);
            if (changed && (one.Filter.Level || own.BothEdges) && !one.Faulty)
                AcceptPulse(index);
        }
    }

    /// <summary>A pulse too fast is ignored; one that no pump can have caused is accepted, and alarmed.</summary>
    private void AcceptPulse(int index)
    {
        SwitchState one = state.Switches[index];
        if (IsTooFast(index))
            return;
        if (one.Filter.Level)
            one.SinceOnMs = 0;
        else
            one.SinceOffMs = 0;
        one.Renew(0);
        one.Witnesses = default;
        if (pump.IsIdle)
        {
            alarms.NoteInstant(AlarmId.PulseWhileIdle);
            return;
        }

        if (one.Filter.Level)
            faults.Witness(index);
        if (index == settings.DoseEndingSwitch && settings.DoseMode == DoseMode.Cycles)
            dose.CountPulse();
    }

    private bool IsTooFast(int index)
    {
        SwitchState one = state.Switches[index];
        if ((scan.Inputs.TooFastSwitches >> index & 1) != 0)
            return true;
        if ((one.Filter.Level ? one.SinceOnMs : one.SinceOffMs) >= settings.ShortestPulseIntervalMs)
            return false;
        alarms.NoteInstant(AlarmId.PulseTooFast);
        return true;
    }
}
