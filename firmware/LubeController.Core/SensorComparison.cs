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
    private const int MsPerMinute = 60 * 1000;

    private readonly Settings _settings;
    private bool _cycleOpen;
    private int _revolutions;
    private int _pumpOnMs;
    private int _windowRevolutions;
    private int _windowMs;
    private int _windowCycles;
    private int _pulsesWithoutPressure;
    private bool _volumeWrong;
    private bool _pressureWrong;
    private int _volumePercent;

    public SensorComparison(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether the volume pumped and the pulses of the dose-ending switch disagree.</summary>
    public bool VolumeWrong => _volumeWrong;

    /// <summary>Whether pulses came without the pressure that the divider needs.</summary>
    public bool PressureWrong => _pressureWrong;

    /// <summary>Volume pumped in the latest whole window, per cent of what its pulses stand for, saturating.</summary>
    public int VolumePercent => _volumePercent;

    private bool ComparesVolume => _settings[SettingField.DividerCycleMm3] > 0;

    /// <summary>Reset: only a running pump can show either.</summary>
    public void Renew()
    {
        _volumeWrong = false;
        _pressureWrong = false;
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

    /// <summary>Takes the revolutions since the last scan, before its edges are taken.</summary>
    public void Sample(int revolutions, bool pressureReached)
    {
        if (!_settings.Is(SettingField.PulsesShowPressure))
            _pressureWrong = false;
        if (!ComparesVolume)
            _volumeWrong = false;
        if (_cycleOpen)
            _revolutions = Saturating.Add(_revolutions, revolutions);
        if (pressureReached)
            _pulsesWithoutPressure = 0;
    }

    /// <summary>An accepted on-edge of the dose-ending switch.</summary>
    /// <param name="pumpOn">Whether the pump was on.</param>
    /// <returns>Whether it shows, just now, that volume and pulses disagree.</returns>
    public bool AddCycle(bool pumpOn)
    {
        if (!ComparesVolume || !pumpOn)
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
        return _windowCycles >= _settings[SettingField.VolumeWindow] && CompareWindow();
    }

    /// <summary>An accepted on-edge of any switch, the pump on.</summary>
    /// <returns>Whether it shows, just now, that pressure and pulses disagree.</returns>
    public bool AddPulse(bool pressureReached)
    {
        if (!_settings.Is(SettingField.PulsesShowPressure))
            return false;
        if (pressureReached)
        {
            _pressureWrong = false;
            return false;
        }

        _pulsesWithoutPressure = Saturating.Add(_pulsesWithoutPressure, 1);
        if (_pressureWrong || _pulsesWithoutPressure < _settings[SettingField.PressurePulses])
            return false;
        _pressureWrong = true;
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
        _volumeWrong = stream.Flag(_volumeWrong);
        _pressureWrong = stream.Flag(_pressureWrong);
        _volumePercent = stream.Counter(_volumePercent);
    }

    private bool CompareWindow()
    {
        long pumpedMm3 = _settings.Is(SettingField.PumpRevolutionsFitted)
            ? (long)_windowRevolutions * _settings[SettingField.PumpRevolutionMm3]
            : (long)_windowMs * _settings[SettingField.PumpFlowMm3PerMinute] / MsPerMinute;
        long passedMm3 = (long)_windowCycles * _settings[SettingField.DividerCycleMm3];
        _volumePercent = SafeDivide.QuotientDown(pumpedMm3 * 100, passedMm3);
        ClearWindow();
        int tolerance = _settings[SettingField.VolumeTolerancePercent];
        bool wasWrong = _volumeWrong;
        _volumeWrong = _volumePercent < 100 - tolerance || _volumePercent > 100 + tolerance;
        return _volumeWrong && !wasWrong;
    }

    private void ClearWindow()
    {
        _windowRevolutions = 0;
        _windowMs = 0;
        _windowCycles = 0;
    }
}
