namespace LubeController.Plant.Inputs;

/// <summary>The current bands of NAMUR NE 43: valid 3.8 to 20.5 mA, failure at 3.6 mA or less and at 21 mA or more.</summary>
public static class Ne43
{
    /// <summary>Failure at or below, A.</summary>
    public const double FailureLowA = 3.6e-3;

    /// <summary>Least valid current, A.</summary>
    public const double LeastValidA = 3.8e-3;

    /// <summary>Most valid current, A.</summary>
    public const double MostValidA = 20.5e-3;

    /// <summary>Failure at or above, A.</summary>
    public const double FailureHighA = 21e-3;

    /// <summary>What a current means.</summary>
    /// <param name="currentA">A; not a number is a failure.</param>
    public static Ne43Reading Read(double currentA)
    {
        if (!(currentA > FailureLowA))
            return Ne43Reading.FailureLow;
        if (currentA < LeastValidA)
            return Ne43Reading.UnderRange;
        if (currentA <= MostValidA)
            return Ne43Reading.Valid;
        return currentA < FailureHighA ? Ne43Reading.OverRange : Ne43Reading.FailureHigh;
    }
}
