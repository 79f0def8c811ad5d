namespace LubeController.Analysis.Specification;

/// <summary>Changes of a cycle switch's level before debounce, counted in windows.</summary>
[RegressionModel("how many changes of a level, in which window, are chatter, and when it has ended")]
internal record struct ChatterState
{
    private bool _runs;
    private int _passedMs;
    private int _changes;

    /// <summary>It chatters, until a whole window has too few changes for that.</summary>
    public bool On { get; private set; }

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (_runs)
            _passedMs += elapsedMs;
    }

    /// <summary>A window begins with the first change; while the switch chatters, with the end of the one before.</summary>
    /// <param name="changed">The level has changed in this scan.</param>
    /// <param name="most">With so many changes in one window it chatters.</param>
    /// <param name="windowMs">Length of a window, ms.</param>
    internal void Count(bool changed, int most, int windowMs)
    {
        if (_runs && _passedMs >= windowMs)
        {
            On = _changes >= most;
            _runs = On;
            _passedMs = 0;
            _changes = 0;
        }

        if (!changed)
            return;
        _runs = true;
        _changes++;
        On |= _changes >= most;
    }
}
