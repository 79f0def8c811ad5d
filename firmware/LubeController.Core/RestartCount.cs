namespace LubeController.Core;

/// <summary>Restarts within a window of powered time, and how long the power lasted each time.</summary>
internal sealed class RestartCount
{
    private readonly Settings _settings;
    private int _poweredMs;
    private int _restarts;
    private int _windowMs;

    public RestartCount(Settings settings)
    {
        _settings = settings;
    }

    public void Advance(int elapsedMs)
    {
        _poweredMs = Saturating.Add(_poweredMs, elapsedMs);
        if (_restarts == 0)
            return;
        _windowMs = Saturating.Add(_windowMs, elapsedMs);
        if (_windowMs < _settings[SettingField.RestartWindowMs])
            return;
        _windowMs = 0;
        _restarts = 0;
    }

    /// <summary>Power has come back with a saved state.</summary>
    /// <returns>Whether that was too soon or too often. What was saved last of the time before is less than was lived, by at most one save interval.</returns>
    public bool Add()
    {
        bool tooSoon = _poweredMs < _settings[SettingField.SaveIntervalMs];
        _poweredMs = 0;
        _restarts = Saturating.Add(_restarts, 1);
        int most = _settings[SettingField.RestartsMost];
        return most > 0 && (tooSoon || _restarts > most);
    }

    public void Transfer(StateStream stream)
    {
        int most = _settings[SettingField.RestartsMost];
        _poweredMs = stream.UpTo(_poweredMs, most == 0 ? 0 : _settings[SettingField.SaveIntervalMs]);
        _restarts = stream.UpTo(_restarts, most);
        _windowMs = stream.NumberIf(most > 0 && _restarts > 0, _windowMs);
    }
}
