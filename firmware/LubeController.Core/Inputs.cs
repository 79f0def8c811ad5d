namespace LubeController.Core;

/// <summary>
/// The input image of one scan: levels as wired, before debounce and polarity. Made once and rewritten before every
/// scan. All digital levels share one word, so that "nothing changed" is one comparison.
/// </summary>
public sealed class Inputs
{
    private int _levels = RunningBit;

    /// <summary>Most cycle switches one controller can have.</summary>
    public const int MaxCycleSwitches = 4;

    private const int RunningBit = 1 << 8;
    private const int LowBit = 1 << 9;
    private const int EmptyBit = 1 << 10;
    private const int PressureBit = 1 << 11;
    private const int StopBit = 1 << 12;
    private const int StartBit = 1 << 13; // The other buttons follow in their order, but for the output test, which came later.
    private const int OverloadBit = 1 << 18;
    private const int OutputTestBit = 1 << 19;
    private const int ScanLateBit = 1 << 20;

    /// <summary>All digital levels in one word.</summary>
    public int Levels => _levels;

    /// <summary>Machine running; a machine without this signal reads running, as a broken wire does.</summary>
    public bool MachineRunning { get => Is(RunningBit); set => Put(RunningBit, value); }

    /// <summary>Low-level switch of the reservoir.</summary>
    public bool LevelLow { get => Is(LowBit); set => Put(LowBit, value); }

    /// <summary>Empty switch of the reservoir.</summary>
    public bool LevelEmpty { get => Is(EmptyBit); set => Put(EmptyBit, value); }

    /// <summary>Pressure switch of the line.</summary>
    public bool PressureSwitch { get => Is(PressureBit); set => Put(PressureBit, value); }

    /// <summary>Operating stop, maintained; true is stop, as a broken wire reads. Not an emergency stop.</summary>
    public bool Stop { get => Is(StopBit); set => Put(StopBit, value); }

    /// <summary>Overload contact of the pump's motor.</summary>
    public bool PumpOverload { get => Is(OverloadBit); set => Put(OverloadBit, value); }

    /// <summary>Set by the main loop: this scan comes later than allowed.</summary>
    public bool ScanLate { get => Is(ScanLateBit); set => Put(ScanLateBit, value); }

    /// <summary>Shaft pulses since the last scan, from a counter with a minimum pulse width; 0 or more.</summary>
    public int ShaftPulses { get; set; }

    /// <summary>Milliseconds since the last of <see cref="ShaftPulses"/>; means nothing where there are none.</summary>
    public int ShaftPulseAgeMs { get; set; }

    /// <summary>Revolutions of the pump since the last scan; 0 or more. Any makes the scan one that decides.</summary>
    public int PumpRevolutions { get; set; }

    /// <summary>Milliseconds since the last of <see cref="PumpRevolutions"/>; means nothing where there are none.</summary>
    public int PumpRevolutionAgeMs { get; set; }

    /// <summary>Supply voltage, ripple filtered out, millivolts.</summary>
    public int SupplyMv { get; set; } = 24000;

    /// <summary>Line pressure from a transmitter, millibar gauge.</summary>
    public int PressureMbar { get; set; }

    /// <summary>Lubricant temperature, tenths of a degree Celsius.</summary>
    public int TemperatureDeciC { get; set; } = 200;

    /// <summary>Level of a cycle switch, 0 to <see cref="MaxCycleSwitches"/> - 1.</summary>
    public bool CycleSwitch(int index) => Is(1 << index);

    /// <summary>Sets the level of a cycle switch, 0 to <see cref="MaxCycleSwitches"/> - 1.</summary>
    public void SetCycleSwitch(int index, bool on) => Put(1 << index, on);

    /// <summary>Level of a button.</summary>
    public bool IsDown(Button button) => Is(BitOf(button));

    /// <summary>Sets the level of a button.</summary>
    public void SetDown(Button button, bool down) => Put(BitOf(button), down);

    /// <summary>Takes over every field of another image.</summary>
    public void CopyFrom(Inputs other)
    {
        _levels = other.Levels;
        ShaftPulses = other.ShaftPulses;
        ShaftPulseAgeMs = other.ShaftPulseAgeMs;
        PumpRevolutions = other.PumpRevolutions;
        PumpRevolutionAgeMs = other.PumpRevolutionAgeMs;
        SupplyMv = other.SupplyMv;
        PressureMbar = other.PressureMbar;
        TemperatureDeciC = other.TemperatureDeciC;
    }

    /// <param name="stream">The stream.</param>
    /// <param name="allMatter">Whether a rule reads the held inputs; if not, the core reads only machine running.</param>
    internal void Transfer(StateStream stream, bool allMatter)
    {
        int matter = allMatter ? _levels : _levels & RunningBit;
        int levels = stream.Number(stream.IsComparing ? matter : _levels);
        _levels = stream.IsComparing ? _levels : levels;
        SupplyMv = stream.NumberIf(allMatter, SupplyMv);
        PressureMbar = stream.NumberIf(allMatter, PressureMbar);
        TemperatureDeciC = stream.NumberIf(allMatter, TemperatureDeciC);
    }

    private static int BitOf(Button button) => button == Button.OutputTest ? OutputTestBit : StartBit << (int)button;

    private bool Is(int bit) => (_levels & bit) != 0;

    private void Put(int bit, bool on) => _levels = on ? _levels | bit : _levels & ~bit;
}
