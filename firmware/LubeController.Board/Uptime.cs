using LubeController.Core;

namespace LubeController.Board;

/// <summary>The time powered in the board's life, power cuts left out. It saturates after 68 years.</summary>
public sealed class Uptime
{
    private int _seconds;
    private int _milliseconds;

    /// <summary>Whole seconds.</summary>
    public int Seconds => _seconds;

    /// <summary>Milliseconds beyond them, 0 to 999.</summary>
    public int Milliseconds => _milliseconds;

    /// <summary>Lets time pass.</summary>
    /// <param name="elapsedMs">Milliseconds, 0 or more.</param>
    public void Advance(int elapsedMs)
    {
        int seconds = elapsedMs / 1000;
        _milliseconds += elapsedMs - (seconds * 1000);
        if (_milliseconds >= 1000)
        {
            _milliseconds -= 1000;
            seconds++;
        }

        _seconds = Saturating.Add(_seconds, seconds);
    }

    /// <summary>Goes on from a time that was kept, if it is later; what is no time is left.</summary>
    public void RaiseTo(int seconds, int milliseconds)
    {
        if (milliseconds < 0 || milliseconds > 999 || seconds < _seconds || (seconds == _seconds && milliseconds < _milliseconds))
            return;
        _seconds = seconds;
        _milliseconds = milliseconds;
    }
}
