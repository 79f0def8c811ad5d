namespace LubeController.Analysis.Specification;

/// <summary>The delays on and off of one alarm's condition.</summary>
internal record struct DelayFilter
{
    private int _changingMs;

    /// <summary>The condition as last judged.</summary>
    public bool Present { get; private set; }

    /// <summary>The condition, delays included.</summary>
    public bool On { get; private set; }

    /// <summary>A condition that was there for an instant and is judged gone from now on.</summary>
    internal static DelayFilter OfAnInstant => new() { On = true };

    /// <summary>A condition that is there until it is ended.</summary>
    internal static DelayFilter Lasting => new() { On = true, Present = true };

    /// <summary>Lets time pass under the condition last judged.</summary>
    internal void Pass(int elapsedMs)
    {
        if (Present != On)
            _changingMs += elapsedMs;
    }

    /// <summary>Follows the condition, each change of it after its delay.</summary>
    internal void Follow(bool condition, AlarmDelays delays)
    {
        if (condition != Present)
        {
            Present = condition;
            _changingMs = 0;
        }

        if (Present != On && _changingMs >= (Present ? delays.OnMs : delays.OffMs))
            On = Present;
        if (Present == On)
            _changingMs = 0;
    }
}
