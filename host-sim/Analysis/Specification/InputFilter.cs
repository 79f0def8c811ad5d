namespace LubeController.Analysis.Specification;

/// <summary>
/// Debounce of one level. Nothing is known after power-up until the level has stood for the debounce time.
/// </summary>
internal record struct InputFilter
{
    private bool _seen;
    private bool _raw;
    private int _stableMs;

    /// <summary>Whether a level has been accepted since power-up.</summary>
    public bool Known { get; private set; }

    /// <summary>The accepted level; false while unknown.</summary>
    public bool Level { get; private set; }

    /// <summary>The accepted level, or null while unknown.</summary>
    internal readonly bool? Accepted => Known ? Level : null;

    private readonly bool Settled => Known && _raw == Level;

    /// <summary>Whether a level differs from the one last seen, once one has been accepted.</summary>
    internal readonly bool Changes(bool raw) => Known && raw != _raw;

    /// <summary>Lets time pass under the level last seen.</summary>
    internal void Pass(int elapsedMs)
    {
        if (_seen && !Settled)
            _stableMs += elapsedMs;
    }

    /// <summary>Sees a level. Returns whether an accepted level has changed to another: the first one is no change.</summary>
    /// <param name="raw">The level.</param>
    /// <param name="debounceMs">How long it must have stood, ms.</param>
    /// <param name="mayAccept">Whether a level may be accepted now at all.</param>
    internal bool Accept(bool raw, int debounceMs, bool mayAccept = true)
    {
        if (!_seen || raw != _raw)
            _stableMs = 0;
        _seen = true;
        _raw = raw;
        if (Settled)
            _stableMs = 0;
        if (Settled || !mayAccept || _stableMs < debounceMs)
            return false;
        bool changed = Known;
        Known = true;
        Level = raw;
        _stableMs = 0;
        return changed;
    }
}
