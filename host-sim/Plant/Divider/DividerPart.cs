using LubeController.Plant.Hydraulics;

namespace LubeController.Plant.Divider;

/// <summary>A piston of a divider, or its inlet, in the network.</summary>
/// <param name="Divider">The divider.</param>
/// <param name="Index">The piston's index in the divider; -1 for the inlet.</param>
/// <param name="Network">The network.</param>
internal sealed record DividerPart(ProgressiveDivider Divider, int Index, Network Network)
{
    /// <summary>Whether any piston would move if nothing but the inlet stood in its way.</summary>
    internal bool AnyWouldMove => Divider.WouldMove(Network);

    /// <summary>Whether the piston has its way open and pressure that a sound one would move by.</summary>
    internal bool IsPushed => Divider.IsPushed(Network, Index);

    /// <summary>Whether lubricant passes by the piston now.</summary>
    internal bool IsBypassed
    {
        get
        {
            for (int b = 0; b < Network.Branches; b++)
            {
                ref readonly Branch branch = ref Network.Branch(b);
                if (branch.Kind == BranchKind.Bypass && branch.Unit == Divider.Unit && branch.Part == Index && Network.BranchVolumeM3(b) > 0)
                    return true;
            }

            return false;
        }
    }
}
