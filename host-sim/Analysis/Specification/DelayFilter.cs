namespace LubeController.Analysis.Specification;

/// <summary>The delays on and off of one alarm's condition.</summary>
public record struct DelayFilter
{
    private bool _changing;
    private int _changingMs;

    /// <summary>The condition, delays included.</summary>
    public bool On { get; private set; }

    /// <summary>Lets time pass under the condition last judged.</summary>
    internal void Pass(int elapsedMs)
    {
        if (_changing)
            _changingMs += elapsedMs;
    }

    /// <summary>Judges the condition anew.</summary>
    internal void Take(bool condition, AlarmDelays delays)
    {
        if (condition != On && !_changing)
        {
            _changing = true;
            _changingMs = 0;
        }

        if (condition != On && _changingMs >= (condition ? delays.OnMs : delays.OffMs))
            On = condition;
        if (condition == On)
        {
            _changing = false;
            _changingMs = 0;
        }
    }

    /// <summary>Forgets a change under way, as a power cut does.</summary>
    internal void Restart()
    {
        _changing = false;
        _changingMs = 0;
    }
}
