namespace LubeController.Analysis.Specification;

/// <summary>What is kept of the shaft and of machine running.</summary>
internal record struct ShaftState
{
    /// <summary>Time since the last shaft pulse, up to the standstill time, ms.</summary>
    internal int StillMs;

    /// <summary>The same up to the shaft timeout, counted while the machine runs only. Standing still does not renew it: of a machine that runs in bursts nobody would ever hear.</summary>
    internal int LostMs;

    /// <summary>Time in which the shaft turned on without machine running, ms.</summary>
    internal long RunDownMs;

    /// <summary>The shaft turned on after the run-down, and neither stands nor runs the machine since.</summary>
    internal bool TurnsOn;
}

/// <summary>The shaft, machine running, and whether the two contradict each other.</summary>
internal sealed class Shaft(SpecSettings settings, SpecState state, SpecScan scan)
{
    private bool _stoodBefore;

    /// <summary>Machine running, as a broken wire has it, and as long as nothing is known.</summary>
    internal bool MachineRuns => state.Levels.MachineRunning.Accepted ?? true;

    /// <summary>What the shaft shows counts for the rest: a machine that turns is lubricated, whatever its running signal says.</summary>
    internal bool MachineTurns => MachineRuns || state.Shaft.TurnsOn;

    /// <summary>Both inputs are fitted and say standstill.</summary>
    internal bool BothSayStandstill => settings.HasShaft && !MachineRuns && Stands;

    private bool Stands => state.Shaft.StillMs >= settings.ShaftStandstillMs;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        ref ShaftState shaft = ref state.Shaft;
        _stoodBefore = Stands;
        if (!MachineRuns && !_stoodBefore)
            shaft.RunDownMs += elapsedMs;
        shaft.StillMs = Durations.More(shaft.StillMs, elapsedMs, settings.ShaftStandstillMs);
        if (MachineRuns)
            shaft.LostMs = Durations.More(shaft.LostMs, elapsedMs, settings.ShaftTimeoutMs);
    }

    /// <summary>Sees the pulses of this scan.</summary>
    /// <param name="ran">Whether the machine ran before this scan's levels were accepted.</param>
    internal void Count(bool ran)
    {
        if (scan.Inputs.ShaftPulses > 0)
        {
            state.Shaft.StillMs = scan.Inputs.ShaftPulseAgeMs;
            state.Shaft.LostMs = ran ? scan.Inputs.ShaftPulseAgeMs : 0;
        }

        if (settings.RunDownMs > 0 && settings.HasShaft)
            CompareWithMachine();
    }

    /// <summary>
    /// A pulse of a shaft that has not said standstill for the whole run-down shows that it turns on; standstill, or the
    /// machine running, ends that.
    /// </summary>
    [RegressionModel("when a shaft that turns on without machine running is a disagreement, and what ends it")]
    private void CompareWithMachine()
    {
        ref ShaftState shaft = ref state.Shaft;

        // It said standstill in the scan before: a pulse in this one began to turn it.
        if (_stoodBefore)
            shaft.RunDownMs = scan.Inputs.ShaftPulseAgeMs;
        if (state.Levels.MachineRunning is { Known: true, Level: true } || Stands)
        {
            shaft.RunDownMs = 0;
            shaft.TurnsOn = false;
        }
        else if (scan.Inputs.ShaftPulses > 0 && shaft.RunDownMs - scan.Inputs.ShaftPulseAgeMs >= settings.RunDownMs)
        {
            shaft.TurnsOn = true;
        }
    }

    /// <summary>A power cut begins the run-down again, since the shaft was not heard meanwhile; the latch keeps what was found before.</summary>
    internal void PowerUp()
    {
        state.Shaft.StillMs = 0;
        state.Shaft.RunDownMs = 0;
        state.Shaft.TurnsOn = false;
    }
}
