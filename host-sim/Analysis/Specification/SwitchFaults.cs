namespace LubeController.Analysis.Specification;

/// <summary>What proves a cycle switch wrong, and how far one that is wrong is believed.</summary>
internal sealed class SwitchFaults(SpecSettings settings, SpecState state, SpecScan scan, AlarmBook alarms)
{
    /// <summary>
    /// A pulse of one switch is a witness against each other one that is still. Which of two edges in one scan came first nobody
    /// can tell: they are taken in the order of the switches, so that the last pulse of a witness may come just before the edge
    /// that it misses.
    /// </summary>
    [RegressionModel("how many pulses of another switch prove one wrong, and which of two edges in one scan came first")]
    internal void Witness(int index)
    {
        for (int other = 0; other < state.Switches.Length; other++)
        {
            if (other == index)
                continue;
            SwitchState still = state.Switches[other];
            still.Witnesses.Add(index);
            still.Proved |= settings.WitnessPulses > 0 && still.Witnesses.Most >= settings.WitnessPulses;
        }
    }

    /// <summary>
    /// Whoever is found wrong is not believed until reset has cleared the alarm, though its condition ends before. The edge that
    /// completes a proof, which only a debounce shorter than a scan lets through, came before the alarm stood: it is believed.
    /// </summary>
    internal void DistrustWrongSwitches()
    {
        for (int index = 0; index < state.Switches.Length; index++)
            state.Switches[index].Faulty |= state.Switches[index].IsWrong || scan.Inputs.Sees(SwitchFaultRows.RowOf(index, settings));
    }

    /// <summary>A reset ends what a witness proved, since only a running pump can show it.</summary>
    [RegressionModel("whether what was proved waits for its delay off at a reset")]
    internal void EndProofs()
    {
        bool proved = false;
        foreach (SwitchState one in state.Switches)
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

    /// <summary>Where a reset has cleared the alarm every switch is believed again.</summary>
    internal void BelieveWhereFaultIsCleared()
    {
        if (state.Alarm(AlarmId.CycleSwitchFault).Stands || state.Alarm(AlarmId.OtherSwitchFault).Stands)
            return;
        foreach (SwitchState one in state.Switches)
            one.Faulty = false;
    }

    private void EndProof(AlarmId row)
    {
        if (SwitchFaultRows.IsFound(row, settings, state))
            return;
        scan.Began &= ~(1UL << (int)row);
        alarms.EndAtOnce(row);
    }
}
