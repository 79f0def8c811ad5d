namespace LubeController.Core;

/// <summary>
/// Sensors that can only be right together: the divider's pulses against the volume pumped, and against the line pressure.
/// The third comparison, shaft against machine running, is made by <see cref="ShaftWatch"/>.
/// </summary>
/// <remarks>
/// Volume is compared over whole cycles between two pulses of one pump run, since the first pulse of a run waits for
/// pressure. So a run of one pulse compares nothing. What is pumped comes from the pump's revolutions where they are
/// counted, else from pump-on time and the pump's flow.
/// </remarks>
internal sealed class SensorComparison
{
    /// <summary>Volume against pulses, as the subject of <see cref="ScanEvent.SensorsDisagree"/>.</summary>
    public const int ByVolume = 1;

    /// <summary>Pressure against pulses.</summary>
    public const int ByPressure = 2;

    /// <summary>Shaft against machine running.</summary>
    public const int ByShaft = 3;

    private const int MsPerMinute = 60 * 1000;

    private readonly Settings _settings;
    private bool _cycleOpen;
    private int _revolutions;
    private int _pumpOnMs;
    private int _windowRevolutions;
    private int _windowMs;
    private int _windowCycles;
    private int _pulsesWithoutPressure;

    public SensorComparison(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether the volume pumped and the pulses of the dose-ending switch disagree.</summary>
    public bool VolumeWrong { get; private set; }

    /// <summary>Whether pulses came without the pressure that the divider needs.</summary>
    public bool PressureWrong { get; private set; }

    /// <summary>Volume pumped in the latest whole window, per cent of what its pulses stand for, saturating.</summary>
    public int VolumePercent { get; private set; }

    private bool JudgesVolume => _settings[SettingField.DividerCycleMm3] > 0;

    /// <summary>Reset: only a running pump can show either.</summary>
    public void Renew()
    {
        VolumeWrong = false;
        PressureWrong = false;
        _pulsesWithoutPressure = 0;
        _cycleOpen = false;
        ClearWindow();
    }

    /// <param name="elapsedMs">Time that has passed.</param>
    /// <param name="pumpOn">Whether the pump was on throughout.</param>
    public void Advance(int elapsedMs, bool pumpOn)
    {
        if (pumpOn && _cycleOpen)
            _pumpOnMs = Saturating.Add(_pumpOnMs, elapsedMs);
        else
            _cycleOpen = false;
    }

    /// <summary>Takes the revolutions since the last scan, before its edges are judged.</summary>
    public void Sample(int revolutions, bool pressureReached)
    {
        if (!_settings.Is(SettingField.PulsesShowPressure))
            PressureWrong = false;
        if (!JudgesVolume)
            VolumeWrong = false;
        if (_cycleOpen)
            _revolutions = Saturating.Add(_revolutions, revolutions);
        if (pressureReached)
            _pulsesWithoutPressure = 0;
    }

    /// <summary>An accepted on-edge of the dose-ending switch.</summary>
    /// <param name="pumpOn">Whether the pump was on.</param>
    /// <returns>Whether it shows, just now, that volume and pulses disagree.</returns>
    public bool HearCycle(bool pumpOn)
    {
        if (!JudgesVolume || !pumpOn)
            return false;
        bool whole = _cycleOpen;
        int revolutions = _revolutions;
        int pumpOnMs = _pumpOnMs;
        _cycleOpen = true;
        _revolutions = 0;
        _pumpOnMs = 0;
        if (!whole)
            return false;
        _windowRevolutions = Saturating.Add(_windowRevolutions, revolutions);
        _windowMs = Saturating.Add(_windowMs, pumpOnMs);
        _windowCycles++;
        return _windowCycles >= _settings[SettingField.VolumeWindow] && JudgeWindow();
    }

    /// <summary>An accepted on-edge of any switch, the pump on.</summary>
    /// <returns>Whether it shows, just now, that pressure and pulses disagree.</returns>
    public bool HearPulse(bool pressureReached)
    {
        if (!_settings.Is(SettingField.PulsesShowPressure))
            return false;
        if (pressureReached)
        {
            PressureWrong = false;
            return false;
        }

        _pulsesWithoutPressure = Saturating.Add(_pulsesWithoutPressure, 1);
        if (PressureWrong || _pulsesWithoutPressure < _settings[SettingField.PressurePulses])
            return false;
        PressureWrong = true;
        return true;
    }

    public void Transfer(StateStream stream)
    {
        _cycleOpen = stream.Flag(_cycleOpen);
        _revolutions = stream.NumberIf(_cycleOpen, _revolutions);
        _pumpOnMs = stream.NumberIf(_cycleOpen, _pumpOnMs);
        _windowRevolutions = stream.Number(_windowRevolutions);
        _windowMs = stream.Number(_windowMs);
        _windowCycles = stream.Number(_windowCycles);
        _pulsesWithoutPressure = stream.UpTo(_pulsesWithoutPressure, _settings[SettingField.PressurePulses]);
        VolumeWrong = stream.Flag(VolumeWrong);
        PressureWrong = stream.Flag(PressureWrong);
        VolumePercent = stream.Counter(VolumePercent);
    }

    private bool JudgeWindow()
    {
        long pumpedMm3 = _settings.Is(SettingField.PumpRevolutionsFitted)
            ? (long)_windowRevolutions * _settings[SettingField.PumpRevolutionMm3]
            : (long)_windowMs * _settings[SettingField.PumpFlowMm3PerMinute] / MsPerMinute;
        long passedMm3 = (long)_windowCycles * _settings[SettingField.DividerCycleMm3];
        VolumePercent = SafeDivide.QuotientDown(pumpedMm3 * 100, passedMm3);
        ClearWindow();
        int tolerance = _settings[SettingField.VolumeTolerancePercent];
        bool wasWrong = VolumeWrong;
        VolumeWrong = VolumePercent < 100 - tolerance || VolumePercent > 100 + tolerance;
        return VolumeWrong && !wasWrong;
    }

    private void ClearWindow()
    {
        _windowRevolutions = 0;
        _windowMs = 0;
        _windowCycles = 0;
    }
}
