using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What must hold at a power-up.</summary>
internal sealed class CutCheck(ExploredCore explored, CoreMonitors monitors)
{
    private readonly byte[] _state = new byte[explored.Core.StateLength];

    /// <summary>The properties violated, one bit each.</summary>
    /// <param name="cut">What cut the power.</param>
    /// <param name="savedStanding">The alarms that stood when the state was saved.</param>
    public int Violated(PowerCut cut, int savedStanding)
    {
        Controller core = explored.Core;
        int violated = 0;
        if ((savedStanding & ~core.Alarms.Standing) != 0 || !LatchesOutlastAScan())
            violated |= CoreProperty.AlarmSurvivesCut.Bit();
        if (!IsAlarmed(cut) || !monitors.RestartsAreAlarmed(core))
            violated |= CoreProperty.CauseIsAlarmed.Bit();
        if (explored.Outputs.Pump)
            violated |= CoreProperty.NoStartByReset.Bit();
        return violated;
    }

    /// <summary>Whether all that is latched at power-up is so after the first scan, too; the core is left as it was.</summary>
    private bool LatchesOutlastAScan()
    {
        Controller core = explored.Core;
        int latched = core.Alarms.Latched;
        if (latched == 0)
            return true;
        core.SaveState(_state, StateUse.Step);
        explored.Inputs.CopyFrom(explored.Setup.Alphabet.Quiet);
        core.Scan(explored.NowMs);
        bool kept = (latched & ~core.Alarms.Latched) == 0;
        core.RestoreState(_state, StateUse.Step);
        return kept;
    }

    /// <summary>Whether what the main loop found at its restart is alarmed at once.</summary>
    private bool IsAlarmed(PowerCut cut) => cut switch
    {
        PowerCut.LoopFault => explored.Core.Alarms.Stands(AlarmId.LogicFault),
        PowerCut.BlockLost => explored.Core.Alarms.Stands(AlarmId.StorageCorrupt),
        _ => true,
    };
}
