namespace LubeController.Core;

/// <summary>How far the present or pending dose has come, and what is known of the divider's position.</summary>
internal sealed class DoseProgress
{
    private readonly Settings _settings;
    private int _credit;
    private bool _pending;
    private int _edges;
    private int _pumpOnMs;
    private bool _positionKnown;
    private int _openedCounts;

    public DoseProgress(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether a dose was begun and is not completed.</summary>
    public bool Pending => _pending;

    /// <summary>Edges counted in it.</summary>
    public int Edges => _edges;

    /// <summary>Whether the last edge fixed the divider's position; if not, the next pulse only opens the counting.</summary>
    public bool PositionKnown => _positionKnown;

    /// <summary>Doses begun without known position: each gave up to one cycle more than set.</summary>
    public int OpenedCounts => _openedCounts;

    /// <summary>Whether the set number of edges, or the run time, is reached.</summary>
    public bool IsComplete => _settings.DoseMode == DoseMode.Cycles
        ? _edges >= _settings[SettingField.DoseEdges]
        : _pumpOnMs >= _settings[SettingField.DoseRunMs];

    /// <summary>Whether the pump ran too long for one dose.</summary>
    public bool IsTooLong => _pumpOnMs >= _settings[SettingField.DoseLimitMs];

    /// <summary>A dose that does not end on an edge: its edges never fix the divider's position at its end.</summary>
    private bool EndsOffEdge => _settings.DoseMode != DoseMode.Cycles;

    /// <summary>A dose is due where no valid state was found.</summary>
    public void MakeDue() => _pending = true;

    /// <summary>Begins a dose, or goes on with the pending one.</summary>
    public void Begin()
    {
        if (_pending)
            return;
        _pending = true;
        _pumpOnMs = 0;
        _edges = _credit;
        _credit = 0;
    }

    /// <summary>The dose was completed.</summary>
    public void End()
    {
        _pending = false;
        _edges = 0;
        _pumpOnMs = 0;
        _credit = 0;
        if (EndsOffEdge)
            ForgetPosition();
    }

    public void ForgetPosition() => _positionKnown = false;

    /// <summary>The pump-on time counts from zero again, after its limit has acted.</summary>
    public void RenewPumpOn() => _pumpOnMs = 0;

    public void Advance(int elapsedMs) => _pumpOnMs = Saturating.Add(_pumpOnMs, elapsedMs);

    /// <summary>Takes an edge within a dose.</summary>
    /// <returns>Whether it was counted; if not, it opened the counting.</returns>
    public bool Count()
    {
        if (_positionKnown || EndsOffEdge)
        {
            _edges = Saturating.Add(_edges, 1);
            return true;
        }

        _positionKnown = true;
        _openedCounts = Saturating.Add(_openedCounts, 1);
        return false;
    }

    /// <summary>
    /// Takes a run-on edge outside a dose: credited to the pending or next dose up to one less than its set count, so
    /// that every dose needs at least one edge with the pump on.
    /// </summary>
    /// <returns>The credit so far, or -1 where the edge only fixed the position.</returns>
    public int Credit()
    {
        if (EndsOffEdge)
            return 0;
        if (!_positionKnown)
        {
            _positionKnown = true;
            return -1;
        }

        int most = _settings[SettingField.DoseEdges] - 1;
        if (_pending)
            return _edges = _edges < most ? _edges + 1 : _edges;
        return _credit = _credit < most ? _credit + 1 : _credit;
    }

    public int DeadlineMs()
    {
        int deadline = Saturating.Remaining(_settings[SettingField.DoseLimitMs], _pumpOnMs);
        if (_settings.DoseMode == DoseMode.RunTime)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.DoseRunMs], _pumpOnMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        _pending = stream.Flag(_pending);
        _edges = stream.NumberIf(_settings.DoseMode == DoseMode.Cycles, _edges);
        _pumpOnMs = stream.UpTo(_pumpOnMs, _settings[SettingField.DoseLimitMs]);
        _positionKnown = stream.Flag(_positionKnown);
        _openedCounts = stream.Counter(_openedCounts);
        _credit = stream.Number(_credit);
    }
}
