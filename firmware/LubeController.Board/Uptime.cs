using LubeController.Core;

namespace LubeController.Board;

/// <summary>The time powered in the board's life, power cuts left out. It saturates after 68 years.</summary>
public sealed class Uptime
{
    /// <summary>Whole seconds.</summary>
    public int Seconds { get; private set; }

    /// <summary>Milliseconds beyond them, 0 to 999.</summary>
    public int Milliseconds { get; private set; }

    /// <summary>Lets time pass.</summary>
    /// <param name="elapsedMs">Milliseconds, 0 or more.</param>
    public void Advance(int elapsedMs)
    {
        int seconds = elapsedMs / 1000;
        Milliseconds += elapsedMs - (seconds * 1000);
        if (Milliseconds >= 1000)
        {
            Milliseconds -= 1000;
            seconds++;
        }

        Seconds = Saturating.Add(Seconds, seconds);
    }

    /// <summary>Goes on from a time that was kept, if it is later; what is no time is left.</summary>
    public void RaiseTo(int seconds, int milliseconds)
    {
        if (milliseconds < 0 || milliseconds > 999 || seconds < Seconds || (seconds == Seconds && milliseconds < Milliseconds))
            return;
        Seconds = seconds;
        Milliseconds = milliseconds;
    }
}
