namespace LubeController.Analysis.Exploration;

/// <summary>What happens to the power at the end of a step.</summary>
public enum PowerCut
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It is cut and comes back: what was saved last is restored.</summary>
    Cut,

    /// <summary>It is cut in the middle of the save that is due: the one before is restored.</summary>
    CutInSave,
}
