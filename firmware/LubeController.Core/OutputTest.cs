namespace LubeController.Core;

/// <summary>The output test: four parts of one length in which relay, warning output and lamp are moved. The table stands in <c>firmware/PHASES.md</c>.</summary>
internal sealed class OutputTest
{
    private readonly Settings _settings;
    private readonly PhaseMachine _phases;

    public OutputTest(Settings settings, PhaseMachine phases)
    {
        _settings = settings;
        _phases = phases;
    }

    /// <summary>Whether its time is over.</summary>
    public bool IsOver => _phases.ElapsedMs >= LengthMs;

    private int LengthMs => _settings[SettingField.OutputTestMs];

    private int PartMs => LengthMs / 4;

    private int Part => SafeDivide.Quotient(_phases.ElapsedMs, PartMs);

    /// <summary>Relay dropped; warning; lamp; all three energised.</summary>
    public void Drive(Outputs outputs)
    {
        int part = Part;
        outputs.HealthyRelay = part != 0;
        outputs.Warning = part == 1 || part == 3;
        outputs.Lamp = part == 2 || part == 3;
    }

    public int DeadlineMs() => Saturating.Min(
        Saturating.Remaining(LengthMs, _phases.ElapsedMs),
        Saturating.Remaining((Part + 1) * PartMs, _phases.ElapsedMs));
}
