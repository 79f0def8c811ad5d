using System;
using System.Globalization;
using System.Threading;
using LubeController.Scripts.Replaying;

namespace LubeController.Cli;

/// <summary>
/// A bar on the error stream, drawn only on a terminal and only when a replay takes long. Wall time decides nothing here
/// but whether the bar is drawn.
/// </summary>
internal sealed class TerminalProgress : IReplayProgress, IDisposable
{
    private const int Width = 30;
    private static readonly TimeSpan FirstAfter = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Every = TimeSpan.FromMilliseconds(200);

    private readonly Action<string> _write;
    private readonly Lock _lock = new();
    private Timer? _timer;
    private int _scripts;
    private int _done;
    private bool _drawn;

    private TerminalProgress(Action<string> write) => _write = write;

    /// <summary>A bar where the error stream is a terminal, else none.</summary>
    public static IReplayProgress ForThisTerminal() =>
        Console.IsErrorRedirected ? new NoProgress() : new TerminalProgress(Console.Error.Write);

    /// <summary>The bar itself, without line end.</summary>
    public static string Bar(int done, int scripts)
    {
        int full = scripts == 0 ? Width : (int)((long)Width * done / scripts);
        return string.Create(CultureInfo.InvariantCulture, $"[{new string('#', full)}{new string('.', Width - full)}] {done} of {scripts} scripts");
    }

    /// <inheritdoc/>
    public void Begin(int scripts)
    {
        _scripts = scripts;
        _timer = new Timer(_ => Draw(), null, FirstAfter, Every);
    }

    /// <inheritdoc/>
    public void Advance() => Interlocked.Increment(ref _done);

    /// <inheritdoc/>
    public void Clear()
    {
        lock (_lock)
        {
            if (_drawn)
                _write("\r\u001b[K");
            _drawn = false;
            if (Volatile.Read(ref _done) >= _scripts)
                Dispose();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _timer?.Dispose();
        _timer = null;
    }

    private void Draw()
    {
        lock (_lock)
        {
            if (_timer == null)
                return;
            _write("\r" + Bar(Volatile.Read(ref _done), _scripts));
            _drawn = true;
        }
    }
}
