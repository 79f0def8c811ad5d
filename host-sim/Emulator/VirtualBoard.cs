using System;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>
/// The board as the deployed main loop sees it: pins, clock and watchdog. The loop's own wait moves the world.
/// </summary>
internal sealed class VirtualBoard : IBoard
{
    private readonly BenchSetup _setup;
    private readonly Bench _bench;
    private readonly BenchWorld _world;
    private readonly InputSampler _sampler;
    private readonly OutputPins _pins;
    private readonly BenchRecorders _recorders;
    private readonly PinEvents _events;
    private readonly ScanTicks _ticks;
    private readonly ScanWait _wait;
    private readonly Action<AlarmId> _noteRefusal;
    private long _powerUpMs;

    public VirtualBoard(BenchSetup setup, Bench bench, BenchWorld world, InputSampler sampler, OutputPins pins, BenchRecorders recorders, PinEvents events, ScanTicks ticks, ScanWait wait)
    {
        _setup = setup;
        _bench = bench;
        _world = world;
        _sampler = sampler;
        _pins = pins;
        _recorders = recorders;
        _events = events;
        _ticks = ticks;
        _wait = wait;
        _noteRefusal = alarm => bench.Trace.Note(world.NowUs, "press", $"shelving {AlarmTable.Spec(alarm).Name} refused");
    }

    /// <summary>The main loop that runs on it; null before the first power-up.</summary>
    public MainLoop? Loop { get; private set; }

    /// <summary>Scans executed.</summary>
    public long ScansExecuted { get; private set; }

    /// <summary>Whether the run was broken off at its scan bound.</summary>
    public bool BoundReached { get; private set; }

    /// <inheritdoc/>
    public uint NowMs => unchecked(_setup.ClockStartMs + (uint)((_bench.Platform.Clock.BoardUs(_world.NowUs) / 1000) - _powerUpMs));

    /// <inheritdoc/>
    public ResetCause ResetCause { get; private set; }

    /// <inheritdoc/>
    public int LateMs => _bench.Controls.Held(ControllerInputs.ScanLate) is not { } late ? _ticks.LateMs : late != 0 ? int.MaxValue : 0;

    /// <inheritdoc/>
    public bool HasWallTime => _setup.WallTimeAtStartS != 0;

    /// <inheritdoc/>
    public uint WallTimeS => unchecked(_setup.WallTimeAtStartS + (uint)(_world.NowUs / 1_000_000));

    /// <summary>Starts the board: everything that lives in its volatile memory begins from nothing.</summary>
    public void PowerUp(ResetCause cause)
    {
        _powerUpMs = _bench.Platform.Clock.BoardUs(_world.NowUs) / 1000;
        _ticks.Begin();
        _sampler.Begin();
        _pins.Begin();
        _bench.AlarmRequests.Clear();
        _bench.Platform.Watchdog.Arm(_world.NowUs);
        _recorders.Core.Begin();
        ResetCause = cause;
        _bench.Storage.PowerBack();
        _bench.Platform.NoteStart();
        Loop = new MainLoop(this, _bench.Storage, _setup.Settings, _setup.MakeRule?.Invoke());
    }

    /// <inheritdoc/>
    public void ReadInputs(Inputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (_bench.Platform.LoopThrows)
        {
            _bench.Platform.Throws++;
            throw new InvalidOperationException("a driver of the board threw, as it was told to");
        }

        _sampler.Sample(inputs);
        _recorders.Core.RecordInputs(_world.NowUs, inputs);
    }

    /// <inheritdoc/>
    public void WriteOutputs(Outputs outputs)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        bool completed = Loop!.Faults == 0;
        if (completed)
            _recorders.Core.RecordCore(_world.NowUs, Loop.Core);
        _pins.Write(outputs, completed);
    }

    /// <inheritdoc/>
    public void KickWatchdog() => _bench.Platform.Watchdog.Kick(_world.NowUs);

    /// <inheritdoc/>
    public void Restart() => _bench.Trace.Note(_world.NowUs, "board", "restarts after a fault in the main loop");

    /// <inheritdoc/>
    public bool WaitForNextScan(Controller core, int mostMs)
    {
        ArgumentNullException.ThrowIfNull(core);
        ScansExecuted++;
        _events.Scanned();
        _bench.Platform.Timing.Scanned();
        _world.AfterScan();
        if (ScansExecuted >= _setup.ScanBound)
        {
            BoundReached = true;
            return false;
        }

        if (_bench.Storage.PowerLost)
            return false;
        _bench.AlarmRequests.CarryOut(core, _noteRefusal);
        return _wait.MoveWorld(core, mostMs);
    }
}
