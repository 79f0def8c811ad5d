namespace LubeController.Core;

/// <summary>Powered time since the last completed dose.</summary>
internal sealed class OverdueClock
{
    private readonly Settings _settings;
    private int _elapsedMs;

    public OverdueClock(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether no dose was completed within the limit.</summary>
    public bool IsOver => _elapsedMs >= LimitMs;

    private int LimitMs => _settings[SettingField.OverdueMs];

    public void Advance(int elapsedMs) => _elapsedMs = Saturating.Add(_elapsedMs, elapsedMs);

    public void Renew() => _elapsedMs = 0;

    public int DeadlineMs() => IsOver ? Saturating.Never : Saturating.Remaining(LimitMs, _elapsedMs);

    public void Transfer(StateStream stream) => _elapsedMs = stream.UpTo(_elapsedMs, LimitMs);
}
