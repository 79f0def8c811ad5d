using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>The board after a cut: nothing comes in, no time passes.</summary>
internal sealed class TrialBoard : IBoard
{
    public uint NowMs => 0;

    public ResetCause ResetCause => ResetCause.PowerOn;

    public int LateMs => 0;

    public bool HasWallTime => false;

    public uint WallTimeS => 0;

    public void ReadInputs(Inputs inputs)
    {
    }

    public void WriteOutputs(Outputs outputs)
    {
    }

    public void KickWatchdog()
    {
    }

    public bool WaitForNextScan(Controller core, int mostMs) => false;

    public void Restart()
    {
    }
}
