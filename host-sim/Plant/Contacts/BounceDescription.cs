namespace LubeController.Plant.Contacts;

/// <summary>How long a contact bounces when it moves.</summary>
/// <param name="MeanUs">Mean, us; 0 for none.</param>
/// <param name="WorstUs">Worst, us, the mean or more.</param>
public sealed record BounceDescription(long MeanUs, long WorstUs)
{
    /// <summary>No bounce.</summary>
    public static BounceDescription None { get; } = new(0, 0);

    /// <summary>Mean 1.6 ms, worst 6.2 ms: Ganssle, A guide to debouncing, from memory.</summary>
    public static BounceDescription Usual { get; } = new(1_600, 6_200);

    /// <summary>A reed, which settles within 1 ms; the mean of 0.4 ms is assumed.</summary>
    public static BounceDescription Reed { get; } = new(400, 1_000);
}
