namespace LubeController.Plant.Faults;

/// <summary>A fault in place on the part that has it.</summary>
/// <param name="fault">The fault.</param>
/// <param name="part">Name of the part, empty where there is nothing to choose.</param>
public abstract class ActiveFault(Fault fault, string part)
{
    /// <summary>The fault.</summary>
    public Fault Fault { get; } = fault;

    /// <summary>Name of the part, empty where there is nothing to choose.</summary>
    public string Part { get; } = part;

    /// <summary>The magnitude, SI; 0 where there is none.</summary>
    public double Value { get; internal set; }

    /// <summary>The second number, SI; 0 where there is none.</summary>
    public double Second { get; internal set; }

    /// <summary>Its entry in the <see cref="FaultLog"/>.</summary>
    public int Entry { get; internal set; }

    /// <summary>Whether its magnitude changes nothing: one that grows begins so.</summary>
    internal bool IsHarmless => Fault.Parameter is { Harmless: { } harmless } && Value == harmless;

    /// <summary>Puts it in place with its present numbers, or heals it.</summary>
    internal void Change(bool on, long nowUs) =>
        Change(new FaultSetting(on, on ? Value : Fault.Parameter?.Harmless ?? 0, Second, nowUs));

    /// <summary>Changes the part.</summary>
    protected abstract void Change(in FaultSetting setting);

    /// <summary>Whether the part behaves otherwise than the sound one would, now or, where that is counted, since it was set.</summary>
    protected internal abstract bool MakesDifference();
}
