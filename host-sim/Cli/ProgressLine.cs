using System;
using System.Threading;

namespace LubeController.Cli;

/// <summary>
/// One line that says how far a long task is, drawn over itself several times a second, and only when the task takes long. Wall
/// time decides nothing but when the line is drawn.
/// </summary>
internal sealed class ProgressLine : IDisposable
{
    private const string Erase = "\r\u001b[K";
    private static readonly TimeSpan FirstAfter = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Every = TimeSpan.FromMilliseconds(200);

    private readonly Lock _lock = new();
    private readonly Action<string>? _write;
    private readonly Func<string> _text;
    private readonly Timer? _timer;
    private bool _drawn;
    private bool _over;

    /// <summary>Begins to draw.</summary>
    /// <param name="write">Writes to a terminal; null where there is none.</param>
    /// <param name="text">The line as the task stands; asked from another thread.</param>
    public ProgressLine(Action<string>? write, Func<string> text)
    {
        _write = write;
        _text = text;
        _timer = write == null ? null : new Timer(_ => Draw(), null, FirstAfter, Every);
    }

    /// <summary>Where progress is drawn: the error stream if it is a terminal, else nowhere.</summary>
    public static Action<string>? Terminal => Console.IsErrorRedirected ? null : Console.Error.Write;

    /// <summary>Draws the line as the task stands.</summary>
    public void Draw()
    {
        lock (_lock)
        {
            if (_over)
                return;
            _write?.Invoke(Erase + _text());
            _drawn = true;
        }
    }

    /// <summary>Gets the line out of the way of something else that is printed.</summary>
    public void Clear()
    {
        lock (_lock)
        {
            if (_drawn)
                _write?.Invoke(Erase);
            _drawn = false;
        }
    }

    /// <summary>Draws no more.</summary>
    public void Dispose()
    {
        lock (_lock)
            _over = true;
        _timer?.Dispose();
        Clear();
    }
}
