using System;
using LubeController.Board;
using LubeController.Core;
using LubeController.Emulator.Storage;
using LubeController.Plant;

namespace LubeController.Tests.Support;

/// <summary>
/// The deployed main loop on a plant, scanned at every tick, with nothing recorded: what a simulated second costs by itself.
/// </summary>
public sealed class UnrecordedBoard : IBoard
{
    private const int ScanPeriodMs = 10;

    private readonly LubricationSystem _plant;
    private readonly MainLoop _loop;
    private long _untilUs;

    /// <summary>Powers a board up on a plant.</summary>
    public UnrecordedBoard(LubricationSystem plant, Settings settings)
    {
        _plant = plant;
        _loop = new MainLoop(this, new FlashStorage(MemoryLayout.UsualBlocks, MemoryLayout.UsualBlockLength), settings, rule: null);
    }

    /// <summary>The core under way.</summary>
    public Controller Core => _loop.Core;

    /// <inheritdoc/>
    public uint NowMs => unchecked((uint)(_plant.NowUs / 1000));

    /// <summary>Goes on for so many simulated seconds.</summary>
    /// <exception cref="InvalidOperationException">The loop caught an exception.</exception>
    public void Run(int seconds)
    {
        _untilUs = _plant.NowUs + (seconds * 1_000_000L);
        _loop.Run();
        if (_loop.Faults > 0)
            throw new InvalidOperationException("the main loop caught an exception");
    }

    /// <inheritdoc/>
    public ResetCause ResetCause => ResetCause.PowerOn;

    /// <inheritdoc/>
    public int LateMs => 0;

    /// <inheritdoc/>
    public bool HasWallTime => false;

    /// <inheritdoc/>
    public uint WallTimeS => 0;

    /// <inheritdoc/>
    public void ReadInputs(Inputs inputs)
    {
        for (int index = 0; index < _plant.CycleSwitchCount; index++)
            inputs.SetCycleSwitch(index, _plant.CycleSwitchOn(index));
        inputs.LevelLow = _plant.LevelLow;
        inputs.LevelEmpty = _plant.LevelEmpty;
        inputs.PressureSwitch = _plant.PressureSwitchOn;
        inputs.PressureMbar = (int)(_plant.TransmitterPressurePa / 100);
        inputs.TemperatureDeciC = (int)((_plant.TemperatureK - 273.15) * 10.0);
    }

    /// <inheritdoc/>
    public void WriteOutputs(Outputs outputs) => _plant.SetPumpContact(outputs.Pump);

    /// <inheritdoc/>
    public void KickWatchdog()
    {
    }

    /// <inheritdoc/>
    public bool WaitForNextScan(Controller core, int mostMs)
    {
        _plant.AdvanceTo(_plant.NowUs + (ScanPeriodMs * 1000L));
        return _plant.NowUs < _untilUs;
    }

    /// <inheritdoc/>
    public void Restart()
    {
    }
}
