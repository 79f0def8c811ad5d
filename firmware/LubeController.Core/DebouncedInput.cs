namespace LubeController.Core;

/// <summary>A level that counts once it has rested for a debounce time. The first level accepted is a baseline.</summary>
internal sealed class DebouncedInput
{
    private bool _sampled;
    private bool _raw;
    private int _rawForMs;
    private bool _level;
    private bool _known;

    /// <summary>The level accepted last; means nothing before <see cref="Known"/>.</summary>
    public bool Level => _level;

    /// <summary>Whether a level has been accepted since <see cref="Forget"/>.</summary>
    public bool Known => _known;

    private bool Waits => _sampled && (!_known || _raw != _level);

    /// <summary>Forgets what was accepted, as at power-up.</summary>
    public void Forget()
    {
        _sampled = false;
        _known = false;
        _rawForMs = 0;
    }

    public void Advance(int elapsedMs)
    {
        if (Waits)
            _rawForMs = Saturating.Add(_rawForMs, elapsedMs);
    }

    /// <summary>Takes the level as wired.</summary>
    /// <returns>Whether a level was accepted just now: the baseline, or an edge where <see cref="Known"/> was true before.</returns>
    public bool Sample(bool raw, int debounceMs, bool mayAccept)
    {
        if (!_sampled || raw != _raw)
        {
            _sampled = true;
            _raw = raw;
            _rawForMs = 0;
        }

        if (!mayAccept || !Waits || _rawForMs < debounceMs)
            return false;
        _level = raw;
        _known = true;
        return true;
    }

    public int DeadlineMs(int debounceMs) =>
        Waits ? Saturating.Remaining(debounceMs, _rawForMs) : Saturating.Never;

    public void Transfer(StateStream stream, int debounceMs)
    {
        _sampled = stream.Flag(_sampled);
        _raw = stream.FlagIf(_sampled, _raw);
        _rawForMs = stream.UpTo(_rawForMs, Waits ? debounceMs : 0);
        _level = stream.FlagIf(_known, _level);
        _known = stream.Flag(_known);
    }
}
