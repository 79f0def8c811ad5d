namespace LubeController.Plant.Faults;

/// <summary>The plant as its faults see it: its parts, and what the step that now runs moves.</summary>
public abstract class FaultedPlant : FaultHost
{
    /// <summary>A pressure that a person or a switch would notice, Pa.</summary>
    internal const double NoticedPa = 1e4;

    private protected FaultedPlant()
    {
    }

    /// <summary>Lubricant that the pump brings, m3.</summary>
    internal abstract double PumpedStepM3 { get; }

    /// <summary>Air that the pump draws, m3.</summary>
    internal abstract double IngestedStepM3 { get; }

    /// <summary>Lubricant that flows back through vent valve and check valve, m3.</summary>
    internal abstract double ReturnedStepM3 { get; }

    /// <summary>Lubricant that leaks from the line, m3.</summary>
    internal abstract double LeakedStepM3 { get; }

    /// <summary>Pressure in a node at the step's start, Pa.</summary>
    internal abstract double NodePressurePa(int node);

    /// <summary>Whether the line at the pump has a pressure that a person or a switch would notice.</summary>
    internal bool IsPressurised => NodePressurePa(0) > NoticedPa;

    /// <summary>The part that a name names.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="name">Its name, one that the plant has.</param>
    internal abstract TPart Find<TPart>(FaultPart<TPart> kind, string name);
}
