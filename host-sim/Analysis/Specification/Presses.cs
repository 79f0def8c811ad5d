namespace LubeController.Analysis.Specification;

/// <summary>What fresh presses do.</summary>
internal sealed class Presses(
    SpecState state, SpecScan scan, AlarmBook alarms, Phases phases, Pump pump, SwitchFaults faults, SwitchTimers timers, Dosing dose)
{
    /// <summary>Obeys those of this scan: a reset before start, start before dose-now.</summary>
    internal void Obey()
    {
        if (scan.IsFresh(Buttons.Acknowledge))
            alarms.AcknowledgeAll();
        if (scan.IsFresh(Buttons.Reset))
            Reset();
        if (scan.IsFresh(Buttons.Start))
            phases.Fire(PhaseEvent.StartPressed);
        if (scan.IsFresh(Buttons.DoseNow))
            phases.Fire(PhaseEvent.DoseNowPressed);
        if (scan.IsFresh(Buttons.Prime))
            phases.Fire(PhaseEvent.PrimePressed);
        if (scan.IsFresh(Buttons.OutputTest))
            phases.Fire(PhaseEvent.OutputTestPressed);
    }

    private void Reset()
    {
        bool tooLong = state.Alarm(AlarmId.DoseTooLong).Active;
        alarms.EndWhatOnlyARunningPumpShows();
        pump.Reset();
        faults.EndProofs();
        EndDisagreement();
        alarms.ClearLatches();
        faults.BelieveWhereFaultIsCleared();
        timers.Reset();
        state.Dose.PressureMissingMs = 0;
        state.Line.VentingMs = 0;
        dose.ForgetPosition();

        // The condition of dose-too-long is the pump-on time of this dose: kept, it would fail the dose again at once.
        if (tooLong)
            state.Dose.PumpOnMs = 0;
        phases.Fire(PhaseEvent.Reset);
    }

    /// <summary>
    /// One alarm shows several comparisons, of which a reset ends those that only a running pump can show: so it does not wait for
    /// the delay off, unless the shaft turns on now.
    /// </summary>
    [RegressionModel("whether a disagreement waits for its delay off at a reset")]
    private void EndDisagreement()
    {
        if (!state.Shaft.TurnsOn && !scan.Inputs.Sees(AlarmId.SensorsDisagree))
            alarms.EndAtOnce(AlarmId.SensorsDisagree);
    }
}
