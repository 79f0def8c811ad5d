namespace LubeController.Plant.Faults;

/// <summary>What healing a fault brings back.</summary>
public enum FaultHealing
{
    /// <summary>The part is as good as new, and nothing of the fault is left.</summary>
    FullyOnRepair,

    /// <summary>The part is as good as new, but what happened meanwhile stays: lubricant lost, a reservoir filled anew.</summary>
    LeavesTraces,
}
