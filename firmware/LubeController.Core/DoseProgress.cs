namespace LubeController.Core;

/// <summary>How far the present or pending dose has come, and what is known of the divider's position.</summary>
internal sealed class DoseProgress
{
    private readonly Settings _settings;
    private int _credit;

    public DoseProgress(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether a dose was begun and is not completed.</summary>
    public bool Pending { get; private set; }

    /// <summary>Edges counted in it.</summary>
    public int Edges { get; private set; }

    /// <summary>Pump-on time of it.</summary>
    public int PumpOnMs { get; private set; }

    /// <summary>Whether the last edge tells where the divider stands; if not, the next pulse only opens the counting.</summary>
    public bool PositionKnown { get; private set; }

    /// <summary>Doses begun without known position: each gave up to one cycle more than set.</summary>
    public int OpenedCounts { get; private set; }

    /// <summary>Whether the set number of edges, or the run time, is reached.</summary>
    public bool IsComplete => _settings.DoseMode == DoseMode.Cycles
        ? Edges >= _settings[SettingField.DoseEdges]
        : PumpOnMs >= _settings[SettingField.DoseRunMs];

    /// <summary>Whether the pump ran too long for one dose.</summary>
    public bool IsTooLong => PumpOnMs >= _settings[SettingField.DoseLimitMs];

    /// <summary>A dose that does not end on an edge: its edges never tell where the divider stands when it ends.</summary>
    private bool EndsOffEdge => _settings.DoseMode != DoseMode.Cycles;

    /// <summary>A dose is due where no valid state was found.</summary>
    public void MakeDue() => Pending = true;

    /// <summary>Begins a dose, or goes on with the pending one.</summary>
    public void Begin()
    {
        if (Pending)
            return;
        Pending = true;
        PumpOnMs = 0;
        Edges = _credit;
        _credit = 0;
    }

    /// <summary>The dose was completed.</summary>
    public void End()
    {
        Pending = false;
        Edges = 0;
        PumpOnMs = 0;
        _credit = 0;
        if (EndsOffEdge)
            ForgetPosition();
    }

    public void ForgetPosition() => PositionKnown = false;

    /// <summary>The pump-on time counts from zero again, after its limit has done its work.</summary>
    public void RenewPumpOn() => PumpOnMs = 0;

    public void Advance(int elapsedMs) => PumpOnMs = Saturating.Add(PumpOnMs, elapsedMs);

    /// <summary>Takes an edge within a dose.</summary>
    /// <returns>Whether it was counted; if not, it opened the counting.</returns>
    public bool Count()
    {
        if (PositionKnown || EndsOffEdge)
        {
            Edges = Saturating.Add(Edges, 1);
            return true;
        }

        PositionKnown = true;
        OpenedCounts = Saturating.Add(OpenedCounts, 1);
        return false;
    }

    /// <summary>
    /// Takes a run-on edge outside a dose: credited to the pending or next dose up to one less than its set count, so
    /// that every dose needs at least one edge with the pump on.
    /// </summary>
    /// <returns>The credit so far, or -1 where the edge only told the position.</returns>
    public int Credit()
    {
        if (EndsOffEdge)
            return 0;
        if (!PositionKnown)
        {
            PositionKnown = true;
            return -1;
        }

        int most = _settings[SettingField.DoseEdges] - 1;
        if (Pending)
            return Edges = Edges < most ? Edges + 1 : Edges;
        return _credit = _credit < most ? _credit + 1 : _credit;
    }

    public int DeadlineMs()
    {
        int deadline = Saturating.Remaining(_settings[SettingField.DoseLimitMs], PumpOnMs);
        if (_settings.DoseMode == DoseMode.RunTime)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.DoseRunMs], PumpOnMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        Pending = stream.Flag(Pending);
        Edges = stream.NumberIf(_settings.DoseMode == DoseMode.Cycles, Edges);
        PumpOnMs = stream.UpTo(PumpOnMs, _settings[SettingField.DoseLimitMs]);
        PositionKnown = stream.Flag(PositionKnown);
        OpenedCounts = stream.Counter(OpenedCounts);
        _credit = stream.Number(_credit);
    }
}
